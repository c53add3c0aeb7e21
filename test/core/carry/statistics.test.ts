import jstat from "jstat";
import * as simple from "simple-statistics";
import golden from "../../golden/statistics.json";
import { freedomOf, normalTwoTails, tCdf, tQuantile } from "../../../src/core/carry/student";
import { huberLocation, median, weightedMedian } from "../../../src/core/carry/statistics";
import {
  digamma,
  fitPrior,
  moderate,
  priorVariance,
  trigamma,
  trigammaInverse,
} from "../../../src/core/carry/moderation";

const ones = (count: number): Float64Array => new Float64Array(count).fill(1);
const near = (found: number, expected: number, tolerance: number): void => {
  expect(Math.abs(found - expected)).toBeLessThanOrEqual(tolerance);
};

describe("Student's t", () => {
  const { rows, tolerance } = golden.studentT;
  test.each(rows)("handbook table, %d degrees of freedom", (freedom, ...quantiles) => {
    [0.95, 0.975, 0.995].forEach((p, index) => {
      near(tQuantile(p, freedom!), quantiles[index]!, tolerance);
      near(tCdf(quantiles[index]!, freedom!), p, tolerance);
    });
  });

  // jstat is good to 6e-8.
  test.each([0.7, 3.3, 8.6, 41.2])("jstat at %d degrees of freedom", (freedom) => {
    for (const p of [0.02, 0.4, 0.5, 0.9]) {
      near(tQuantile(p, freedom), jstat.studentt.inv(p, freedom), 1e-6);
      near(tCdf(1.3, freedom), jstat.studentt.cdf(1.3, freedom), 1e-7);
    }
  });

  test("the normal tails are those of jstat", () => {
    for (const z of [0, 0.3, 1.96, 4])
      near(normalTwoTails(z), 2 * jstat.normal.cdf(-z, 0, 1), 1e-8);
    expect(normalTwoTails(-1.96)).toBe(normalTwoTails(1.96));
  });

  test("the freedom of a quantile is found again", () => {
    for (const freedom of [1.1, 2, 4, 5.37, 17, 240, 990]) {
      near(freedomOf(tQuantile(0.9, freedom)) / freedom, 1, 1e-10);
    }
    expect(freedomOf(NaN)).toBeNaN();
    expect(freedomOf(1.2)).toBe(1e6);
    expect(freedomOf(Infinity)).toBe(1);
  });
});

describe("polygamma", () => {
  // Derivatives of jstat's ln Γ by central differences: a step h leaves an error of order h².
  test.each([0.3, 1, 2.5, 8, 40])("at %d, the slopes of ln Γ", (x) => {
    const h = 1e-4;
    const [below, at, above] = [x - h, x, x + h].map((t) => jstat.gammaln(t));
    near(digamma(x), (above! - below!) / (2 * h), 2e-6);
    near(trigamma(x), (above! - 2 * at! + below!) / h ** 2, 2e-3);
  });

  // NIST DLMF 5.4.12, 5.4.13 and the recurrences 5.5.2, 5.15.5.
  test("closed forms", () => {
    near(digamma(1), -0.5772156649015329, 1e-14);
    near(digamma(0.5), -0.5772156649015329 - 2 * Math.LN2, 1e-14);
    near(trigamma(1), Math.PI ** 2 / 6, 1e-14);
    near(trigamma(0.5), Math.PI ** 2 / 2, 1e-13);
    near(digamma(3.7) - digamma(2.7), 1 / 2.7, 1e-14);
  });

  test.each(golden.trigammaInverse.rows)("the inverse at %d", (value, x) => {
    near(trigammaInverse(value!), x!, golden.trigammaInverse.tolerance);
  });

  test.each([0, -1, NaN])("%d has none", (x) => {
    expect([digamma(x), trigamma(x), trigammaInverse(x)]).toEqual([NaN, NaN, NaN]);
  });
});

describe("medians", () => {
  test.each([[[3]], [[4, 1]], [[5, 5, 1, 9]], [[2, 8, 6, 6, 1, 7, 7]], [[1, 1, 1, 1]]])(
    "of %j as simple-statistics has it",
    (values) => expect(median(Float64Array.from(values))).toBe(simple.median(values)),
  );

  test("a weight of 3 is three of a kind", () => {
    const weighted = weightedMedian(Float64Array.of(1, 7, 4, 9), Float64Array.of(3, 1, 2, 4));
    expect(weighted).toBe(simple.median([1, 1, 1, 7, 4, 4, 9, 9, 9, 9]));
  });

  test("of nothing is NaN; the input stays as it was", () => {
    expect(median(new Float64Array(0))).toBeNaN();
    const values = Float64Array.of(3, 1, 2);
    median(values);
    expect([...values]).toEqual([3, 1, 2]);
  });
});

describe("Huber's location", () => {
  const { values, median: middle, scale, mu, tuning, tolerance } = golden.huber;

  test("of the chem data", () => {
    near(median(Float64Array.from(values)), middle, tolerance);
    near(
      huberLocation(Float64Array.from(values), ones(values.length), tuning * scale),
      mu,
      tolerance,
    );
  });

  test("with a long reach it is the mean, with a short one the median", () => {
    const sample = Float64Array.of(2, 3, 11, 4, 5);
    near(huberLocation(sample, ones(5), 100), simple.mean([...sample]), 1e-12);
    near(huberLocation(sample, ones(5), 1e-7), simple.median([...sample]), 1e-6);
  });

  test("one value, equal values, two far apart, none", () => {
    expect(huberLocation(Float64Array.of(5), ones(1), 0.1)).toBe(5);
    expect(huberLocation(Float64Array.of(5, 5, 5), ones(3), 0.1)).toBe(5);
    expect(huberLocation(Float64Array.of(1, 9), ones(2), 0.1)).toBe(5);
    expect(huberLocation(new Float64Array(0), ones(0), 0.1)).toBeNaN();
  });

  test("heavy clusters far apart still end", () => {
    const values = Float64Array.from({ length: 999 }, (_, i) => (i % 2 ? 0.9 : -0.9) + i * 1e-7);
    const found = huberLocation(values, ones(999), 0.1);
    expect(found).toBeGreaterThan(-1);
    expect(found).toBeLessThan(1);
  });
});

describe("moderated variance", () => {
  const {
    variances,
    freedom,
    priorFreedom,
    priorVariance: s02,
    moderated,
    tolerance,
  } = golden.moderatedVariance;
  const found = variances.map((variance) => ({ variance, freedom }));

  test("as the reference implementation has it", () => {
    const prior = fitPrior(found, 0, Infinity);
    near(prior.freedom, priorFreedom, tolerance);
    near(prior.variance, s02, tolerance);
    found.forEach((own, index) =>
      near(moderate(prior, own).variance, moderated[index]!, tolerance),
    );
  });

  test("variances that differ by chance alone leave the prior as sure as it may be", () => {
    const alike = [1, 1.01, 0.99, 1, 1].map((variance) => ({ variance, freedom: 4 }));
    expect(priorVariance(alike, 0.07).freedom).toBe(20);
  });

  test("variances that differ wildly leave it at its least", () => {
    const wild = [1e-6, 1e-3, 1, 1e3, 1e6].map((variance) => ({ variance, freedom: 4 }));
    expect(priorVariance(wild, 0.07).freedom).toBe(2);
  });

  test("four discs cannot tell: the usual spread is pooled in", () => {
    const few = [1, 2, 3, 4].map((variance) => ({ variance, freedom: 2 }));
    const pooled = (4 * 0.07 ** 2 + 2 * (1 + 2 + 3 + 4)) / (4 + 8);
    expect(priorVariance(few, 0.07)).toEqual({ variance: expect.closeTo(pooled, 12), freedom: 4 });
    expect(priorVariance([], 0.07)).toEqual({ variance: 0.07 ** 2, freedom: 4 });
  });
});
