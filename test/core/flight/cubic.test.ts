import fc from "fast-check";
import { cubic } from "../../../src/core/flight/curve";

const figure = fc.double({ min: -4, max: 4, noNaN: true });

describe("cubic", () => {
  test("is any cubic that its four values come from", () =>
    fc.assert(
      fc.property(figure, figure, figure, figure, figure, (a, b, c, d, x) => {
        const at = (place: number) => a + b * place + c * place ** 2 + d * place ** 3;
        expect(cubic(at(0), at(1), at(2), at(3), x)).toBeCloseTo(at(x), 9);
      }),
      { seed: 20261125 },
    ));

  test("is no figure where a value is none", () => expect(cubic(1, NaN, 3, 4, 1.5)).toBeNaN());
});
