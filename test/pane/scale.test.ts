import { nearestAt, pathThrough, roundValues, scale } from "../../src/pane/plots/scale";
import { stacked } from "../../src/pane/field/model";

test("a scale is straight and maps its ends to the ends", () => {
  const x = scale([100, 300], [10, 210]);
  expect([x(100), x(200), x(300)]).toEqual([10, 110, 210]);
});

test("a single value stands in the middle", () => {
  expect(scale([5, 5], [0, 100])(5)).toBe(50);
});

test.each([
  [178, 401, 5, [200, 250, 300, 350, 400]],
  [0, 1, 5, [0, 0.2, 0.4, 0.6, 0.8, 1]],
  [-3, 3, 3, [-2, 0, 2]],
])("round values from %p to %p", (low, high, wanted, values) => {
  expect(roundValues(low, high, wanted)).toEqual(values);
});

test("a path begins with a move and goes on with lines", () => {
  expect(
    pathThrough([
      [0, 1],
      [2.04, 3],
    ]),
  ).toBe("M0.0 1.0L2.0 3.0");
});

test("stacked dots never overlap, and lie low where there is room", () => {
  const xs = [10, 12, 30, 11, 50];
  const levels = stacked(xs, 10);
  xs.forEach((x, one) =>
    xs.forEach((other, two) => {
      if (one !== two && levels[one] === levels[two])
        expect(Math.abs(x - other)).toBeGreaterThanOrEqual(10);
    }),
  );
  expect(levels[4]).toBe(0);
});

test("the nearest of some positions", () => {
  expect([nearestAt([0, 10, 20], 14), nearestAt([0, 10, 20], 99), nearestAt([], 3)]).toEqual([
    1, 2, 0,
  ]);
});
