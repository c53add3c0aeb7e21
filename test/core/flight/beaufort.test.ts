import { BEAUFORT } from "../../../src/core/flight/wind";
import golden from "../../golden/beaufort.json";

describe("the Beaufort scale", () => {
  test("begins each force where the World Meteorological Organization does", () => {
    expect(BEAUFORT.map(({ leastMps }) => leastMps)).toEqual(golden.leastMps);
    expect(BEAUFORT.map(({ force }) => force)).toEqual(golden.leastMps.map((_, force) => force));
  });

  test("has the usual wind of each force within it", () => {
    for (const [force, { leastMps, usualMps }] of BEAUFORT.entries()) {
      expect(usualMps).toBeGreaterThanOrEqual(leastMps);
      expect(usualMps).toBeLessThan(BEAUFORT[force + 1]?.leastMps ?? Infinity);
    }
  });
});
