import { airDensity, FULL_EFFECT } from "../../../src/core/flight/air";
import fc from "fast-check";
import { DomainError } from "../../../src/core/errors";
import { playsLikeM } from "../../../src/core/flight/playsLike";
import { DISC_TYPES, type Shot } from "../../../src/core/types";
import { METRES_PER_FOOT } from "../../../src/core/units";

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** All that the model claims to take: 1 to 300 m, 100 m up or down, 25 m/s, −20 to 45 °C, 4,000 m. */
const task = fc.record({
  distanceM: within(1, 300),
  riseM: within(-100, 100),
  headwindMps: within(-25, 25),
  type: fc.constantFrom(null, ...DISC_TYPES),
  density: fc
    .record({ altitudeM: within(0, 4000), temperatureC: within(-20, 45), humidity: within(0, 1) })
    .map(airDensity),
});
type Task = typeof task extends fc.Arbitrary<infer T> ? T : never;

/** An answer, or NaN where the model says in a sentence that it has none. */
function answer({ density, type, ...shot }: Task, change: Partial<Shot> = {}): number {
  try {
    const conditions = { densityKgM3: density, ...FULL_EFFECT };
    return playsLikeM({ ...shot, ...change }, conditions, type);
  } catch (error) {
    expect(error).toBeInstanceOf(DomainError);
    expect(error).toMatchObject({ code: "unavailable" });
    return NaN;
  }
}

const HALF_FOOT_M = 0.5 * METRES_PER_FOOT;

describe("plays-like distance at the edges of what it takes", () => {
  test("is a distance, or a sentence that says why there is none", () =>
    fc.assert(
      fc.property(task, (asked) => {
        const found = answer(asked);
        expect(found).not.toBeLessThanOrEqual(0);
        expect(found).not.toBe(Infinity);
      }),
      { numRuns: 25, seed: 20261125 },
    ));

  test.each([
    [1, 0, 0],
    [1, 1, 0],
    [1, -1, 0],
    [300, 100, 0],
    [300, -100, 0],
    [300, 0, 25],
    [300, 0, -25],
    [1, 0, 25],
    [1, 0, -25],
  ])("has one or the other at the corner %d m, %d m up, %d m/s", (...corner) => {
    const [distanceM, riseM, headwindMps] = corner;
    for (const density of [0.72, 1.4]) {
      const found = answer({ distanceM, riseM, headwindMps, density, type: null });
      expect(found).not.toBeLessThanOrEqual(0);
    }
  });

  // A jump shows as a bend: three answers half a foot apart that do not lie on a line.
  test("has no jumps: half a foot more bends no line by half a foot", () =>
    fc.assert(
      fc.property(task, fc.boolean(), (asked, along) => {
        const [before, here, after] = [-HALF_FOOT_M, 0, HALF_FOOT_M].map((by) =>
          answer(asked, along ? { distanceM: asked.distanceM + by } : { riseM: asked.riseM + by }),
        );
        expect(Math.abs(before! - 2 * here! + after!)).not.toBeGreaterThan(HALF_FOOT_M);
      }),
      { numRuns: 25, seed: 20261125 },
    ));

  test("has no jump where the blend of types bends", () => {
    const asked = { riseM: 5, headwindMps: 3, type: null, density: 1.1 };
    for (const bendFt of [200, 250, 300, 350]) {
      const [before, here, after] = [-0.5, 0, 0.5].map((byFt) =>
        answer({ ...asked, distanceM: (bendFt + byFt) * METRES_PER_FOOT }),
      );
      expect(Math.abs(before! - 2 * here! + after!)).toBeLessThan(HALF_FOOT_M);
    }
  });
});
