import fc from "fast-check";
import golden from "../../golden/circle.json";
import { tCdf } from "../../../src/core/carry/student";
import {
  circlePoints,
  type CirclePoints,
  enoughPoints,
  type SpreadM,
  tDensity,
} from "../../../src/core/choice/quadrature";

/** A t distribution that is normal to the digits that count here. */
const NORMAL = 1e7;
const normalDensity = tDensity(NORMAL);

/** The chance of a normal error in the plane to fall within a circle about the origin. */
function inside(radius: number, [x, y]: number[], [sdX, sdY]: number[], count: number): number {
  const points = circlePoints(radius, count);
  return points.alongM.reduce((sum, along, at) => {
    const half = points.halfWidthM[at]!;
    const across = tCdf((half - y!) / sdY!, NORMAL) - tCdf((-half - y!) / sdY!, NORMAL);
    return sum + (points.weightM[at]! * across * normalDensity((along - x!) / sdX!)) / sdX!;
  }, 0);
}

// Noncentral chi-square and two independent quadratures: test/golden/circle.json.
describe("chance inside a circle", () => {
  test.each(golden.offset.rows)("radius $radius, $distance off", (row) => {
    const found = inside(row.radius, [row.distance, 0], [1, 1], 48);
    expect(Math.abs(found - row.probability)).toBeLessThan(golden.tolerance);
  });

  test.each(golden.ellipse.rows)("radius $radius about $mean, deviation $deviation", (row) => {
    const found = inside(row.radius, row.mean, row.deviation, 48);
    expect(Math.abs(found - row.probability)).toBeLessThan(golden.tolerance);
  });
});

test("points add up the area of the circle", () => {
  const { weightM, halfWidthM } = circlePoints(3, 20);
  const area = weightM.reduce((sum, weight, at) => sum + 2 * weight * halfWidthM[at]!, 0);
  expect(area).toBeCloseTo(Math.PI * 9, 10);
});

test("points are enough: many more change the chance by less than 1e-7", () => {
  const spread = fc.record({
    scaleM: fc.double({ min: 0.3, max: 15, noNaN: true }),
    freedom: fc.double({ min: 2, max: 300, noNaN: true }),
  });
  const sum = (points: CirclePoints, along: SpreadM, across: SpreadM): number => {
    const density = tDensity(along.freedom);
    return points.alongM.reduce((total, miss, at) => {
      const share = 2 * tCdf(points.halfWidthM[at]! / across.scaleM, across.freedom) - 1;
      return (
        total + (points.weightM[at]! * share * density((miss - 3) / along.scaleM)) / along.scaleM
      );
    }, 0);
  };
  fc.assert(
    fc.property(spread, spread, (along, across) => {
      const enough = sum(enoughPoints(10, [along, across]), along, across);
      const many = sum(circlePoints(10, 1200), along, across);
      expect(Math.abs(enough - many)).toBeLessThan(1e-7);
    }),
    { numRuns: 60 },
  );
});

test("a narrower spread is given more points, within a limit", () => {
  const count = (scaleM: number) => enoughPoints(10, [{ scaleM, freedom: 4 }]).alongM.length;
  expect(count(1)).toBeGreaterThan(count(7));
  expect(count(1e-9)).toBeLessThanOrEqual(2048);
});
