import jstat from "jstat";
import { tCdf } from "../../../src/core/carry/student";
import {
  gaussLegendre,
  shareWithin,
  spreadRule,
  tDensity,
  wildReach,
} from "../../../src/core/choice/quadrature";

const sum = (values: Iterable<number>): number =>
  [...values].reduce((all, value) => all + value, 0);

describe("Gauss–Legendre", () => {
  // Abramowitz & Stegun, table 25.4, n = 3: from memory.
  test("three points", () => {
    const { nodes, weights } = gaussLegendre(3, -1, 1);
    [-0.774596669241483, 0, 0.774596669241483].forEach((node, i) =>
      expect(nodes[i]).toBeCloseTo(node, 13),
    );
    [5 / 9, 8 / 9, 5 / 9].forEach((weight, i) => expect(weights[i]).toBeCloseTo(weight, 13));
  });

  test.each([1, 2, 5, 9, 32])(
    "%i points are exact for the polynomials that they should be",
    (n) => {
      const { nodes, weights } = gaussLegendre(n, 1, 3);
      const degree = 2 * n - 1;
      const found = sum(nodes.map((x, i) => weights[i]! * (x / 3) ** degree));
      const exact = (3 / (degree + 1)) * (1 - (1 / 3) ** (degree + 1));
      expect(found / exact).toBeCloseTo(1, 12);
    },
  );
});

describe("Student's t", () => {
  // jstat's density, good to 6e-8.
  test.each([1, 2.5, 4, 11, 60])("density with %d degrees of freedom", (freedom) => {
    const density = tDensity(freedom);
    for (const x of [-3, -0.4, 0, 1, 7])
      expect(density(x)).toBeCloseTo(jstat.studentt.pdf(x, freedom), 7);
  });

  test.each([1, 4, 7.3, 500])("two-sided shares with %d degrees of freedom", (freedom) => {
    const share = shareWithin(freedom);
    for (let reach = 0; reach < 12; reach += 0.0173)
      expect(Math.abs(share(reach) - (2 * tCdf(reach, freedom) - 1))).toBeLessThan(1e-7);
    expect(share(Infinity)).toBe(1);
  });
});

describe("a rule for a spread", () => {
  test.each([2, 4, 6.5, 40])("stands for all but the wildest, freedom %d", (freedom) => {
    const { weights } = spreadRule(freedom, 32, -Infinity, Infinity);
    expect(sum(weights)).toBeCloseTo(1, 6);
    const reach = wildReach(freedom);
    expect(1 - tCdf(reach, freedom)).toBeCloseTo(0.001, 10);
  });

  test("stands for its part only", () => {
    const { weights } = spreadRule(5, 32, -1, 0.5);
    const share = (tCdf(0.5, 5) - tCdf(-1, 5)) / 0.998;
    expect(sum(weights)).toBeCloseTo(share, 8);
  });

  test("has the variance of the t distribution, cut at the wild reach", () => {
    // By a plain sum over thin slices.
    const [freedom, reach] = [6, wildReach(6)];
    const { scales, weights } = spreadRule(freedom, 32, -Infinity, Infinity);
    const slices = Array.from(
      { length: 20_000 },
      (_, i) => -reach + (2 * reach * (i + 0.5)) / 20_000,
    );
    const density = (x: number): number =>
      (jstat.studentt.pdf(x, freedom) / 0.998) * (reach / 10_000);
    const plain = sum(slices.map((x) => x * x * density(x)));
    expect(sum(scales.map((x, i) => x * x * weights[i]!))).toBeCloseTo(plain, 5);
  });

  test.each([
    [1, 1],
    [9, 20],
    [NaN, 1],
  ])("has no points from %d to %d, where nothing is left", (from, to) => {
    expect(spreadRule(5, 32, from, to).scales).toHaveLength(0);
  });
});
