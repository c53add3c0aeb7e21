import { levelM, riseM } from "../../../src/core/flight/wind";
import { toRadians } from "../../../src/core/units";

describe("a line of sight", () => {
  // Angles with exact sines and cosines: 30°, 45°, 60°.
  test.each([
    [0, 1, 0],
    [30, Math.sqrt(3) / 2, 0.5],
    [45, Math.SQRT1_2, Math.SQRT1_2],
    [-60, 0.5, -Math.sqrt(3) / 2],
  ])("of 200 at %d°", (degrees, level, rise) => {
    expect(levelM(200, toRadians(degrees))).toBeCloseTo(200 * level, 10);
    expect(riseM(200, toRadians(degrees))).toBeCloseTo(200 * rise, 10);
  });

  test("makes a right triangle", () =>
    expect(Math.hypot(levelM(123, 0.3), riseM(123, 0.3))).toBeCloseTo(123, 10));

  test("is NaN for NaN", () => {
    expect(levelM(NaN, 0)).toBeNaN();
    expect(riseM(100, NaN)).toBeNaN();
  });
});
