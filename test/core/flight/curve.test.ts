import { FULL_EFFECT } from "../../../src/core/flight/air";
import fc from "fast-check";
import { playsLikeCurve } from "../../../src/core/flight/curve";
import { orNaN, playsLikeM } from "../../../src/core/flight/playsLike";
import { DISC_TYPES } from "../../../src/core/types";
import { METRES_PER_FOOT } from "../../../src/core/units";

const air = { densityKgM3: 1.1, ...FULL_EFFECT };

describe("playsLikeCurve", () => {
  test("keeps within 0.05 ft of the plays-like distance itself", () =>
    fc.assert(
      fc.property(
        fc.constantFrom([5, 0], [-7, 3], [0, -4], [3, 6]),
        fc.constantFrom(null, ...DISC_TYPES),
        fc.double({ min: 20, max: 140, noNaN: true }),
        ([riseM, headwindMps], type, distanceM) => {
          const shot = { distanceM, riseM: riseM!, headwindMps: headwindMps! };
          const found = playsLikeCurve(riseM!, headwindMps!, air, type)(distanceM);
          const exact = playsLikeM(shot, air, type);
          expect(Math.abs(found - exact)).toBeLessThan(0.05 * METRES_PER_FOOT);
        },
      ),
      { numRuns: 25, seed: 20261125 },
    ));

  test.each([61, 76, 90, 91.44, 106, 150])("goes straight through level calm air at %d m", (m) =>
    expect(playsLikeCurve(0, 0, { ...air, densityKgM3: 1.225 }, null)(m)).toBeCloseTo(m, 9),
  );

  test.each([NaN, 0, -5, Infinity])("calls a distance of %d unusable", (distanceM) =>
    expect(() => playsLikeCurve(5, 0, air, null)(distanceM)).toThrow(
      expect.objectContaining({ code: "unusable" }),
    ),
  );

  test("answers up to the last distance that can be reached, where knots beyond cannot", () => {
    const curve = playsLikeCurve(0, 9, air, "putter");
    const answers = Array.from({ length: 16 }, (_, index) => 60 + 5 * index).map((distanceM) => {
      const shot = { distanceM, riseM: 0, headwindMps: 9 };
      return [orNaN(() => curve(distanceM)), orNaN(() => playsLikeM(shot, air, "putter"))];
    });
    expect(answers.some(([, exact]) => Number.isNaN(exact))).toBe(true);
    expect(answers.some(([, exact]) => !Number.isNaN(exact))).toBe(true);
    answers.forEach(([found, exact]) => {
      if (!Number.isNaN(exact)) expect(found).toBeCloseTo(exact!, 1);
    });
  });

  test("has no answer out of reach", () =>
    expect(() => playsLikeCurve(5, 0, air, null)(900)).toThrow(
      expect.objectContaining({ code: "unavailable" }),
    ));
});
