import fc from "fast-check";
import { leastOf } from "../../../src/core/flight/adapted";

const place = fc.double({ min: -3, max: 9, noNaN: true });

describe("leastOf", () => {
  test("finds the bottom of a parabola, or the nearer end", () =>
    fc.assert(
      fc.property(place, (bottom) => {
        const [x, value] = leastOf((at) => (at - bottom) ** 2, 0, 6);
        const nearest = Math.max(0, Math.min(6, bottom));
        expect(Math.abs(x - nearest)).toBeLessThan(0.02);
        expect(value - (nearest - bottom) ** 2).toBeLessThan(1e-3);
      }),
      { seed: 20261125 },
    ));

  test("finds the lower of two hollows", () => {
    const hollows = (x: number) => -Math.exp(-((x - 1) ** 2) * 4) - 1.2 * Math.exp(-((x - 5) ** 2));
    expect(leastOf(hollows, 0, 6)[0]).toBeCloseTo(5, 1);
  });

  test("finds a bottom at the edge of where there are values", () =>
    expect(leastOf((x) => (x < 2.3 ? Infinity : x), 0, 6)[1]).toBeLessThan(2.35));

  test("stays with a value where all are the same", () =>
    expect(leastOf(() => 7, 0, 1)[1]).toBe(7));

  test("says Infinity where there is no value", () =>
    expect(leastOf(() => Infinity, 0, 1)[1]).toBe(Infinity));
});
