import fc from "fast-check";
import { CALM_LEVEL_M, calmLevelM } from "../../../src/core/flight/playsLike";
import { polarFor } from "../../../src/core/flight/polar";
import { DISC_TYPES } from "../../../src/core/types";
import { METRES_PER_FOOT } from "../../../src/core/units";

describe("CALM_LEVEL_M", () => {
  test("keeps within 0.03 ft of the flight itself", () =>
    fc.assert(
      fc.property(
        fc.constantFrom(...DISC_TYPES),
        fc.double({ min: 1, max: 60, noNaN: true }),
        (type, speedMps) => {
          const flown = calmLevelM(polarFor(type, 0), speedMps);
          expect(Math.abs(CALM_LEVEL_M[type](speedMps) - flown)).toBeLessThan(
            0.03 * METRES_PER_FOOT,
          );
        },
      ),
      { numRuns: 60, seed: 20261125 },
    ));

  test("answers the same whatever was asked before", () => {
    const first = CALM_LEVEL_M.fairway(21.3);
    for (const speedMps of [9, 18.7, 22.4, 35]) CALM_LEVEL_M.fairway(speedMps);
    expect(CALM_LEVEL_M.fairway(21.3)).toBe(first);
  });
});
