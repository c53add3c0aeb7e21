import golden from "../../golden/statistics.json";
import {
  inversions,
  latest,
  mannKendall,
  rising,
  theilSen,
} from "../../../src/core/carry/statistics";
import { normalTwoTails } from "../../../src/core/carry/student";
import { trendOf, verdictOf } from "../../../src/core/carry/wear";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readThrows } from "../../../src/core/log/readThrows";

const { x, y, slope, S, varS, Z, pExact, pNormal, tolerance } = golden.sen;
const series = (days: number[], values: number[]) => ({
  days: Float64Array.from(days),
  values: Float64Array.from(values),
});

/** S by its definition, every pair looked at. */
const signs = (days: number[], values: number[]): number => {
  let sum = 0;
  for (let i = 0; i < days.length; i++)
    for (let j = 0; j < days.length; j++)
      if (days[j]! > days[i]!) sum += Math.sign(values[j]! - values[i]!);
  return sum;
};

describe("Theil–Sen", () => {
  test("SciPy's slope", () => expect(theilSen(series(x, y))).toBeCloseTo(slope, 10));
  test("pairs of one day do not count", () =>
    expect(theilSen(series([1, 1, 2, 2], [5, 100, 7, 102]))).toBe(2));
  test("one day has no slope", () => {
    expect(theilSen(series([], []))).toBeNaN();
    expect(theilSen(series([3, 3], [1, 2]))).toBeNaN();
  });
});

describe("Mann–Kendall", () => {
  test("published S, variance, exact and normal p", () => {
    const found = mannKendall(series(x, y));
    expect(found.s).toBe(S);
    expect(found.variance).toBe(varS);
    expect(Math.abs(found.p - pExact)).toBeLessThan(tolerance);
    expect((S - 1) / Math.sqrt(varS)).toBeCloseTo(Z, 6);
    expect(Math.abs(normalTwoTails(Z) - pNormal)).toBeLessThan(tolerance);
  });

  test("from 11 values on, and with ties, p is normal with continuity correction", () => {
    const days = [...x, 11];
    const values = [...y, 7.5];
    const found = mannKendall(series(days, values));
    expect(found.s).toBe(signs(days, values));
    expect(found.variance).toBe((11 * 10 * 27) / 18);
    expect(found.p).toBeCloseTo(normalTwoTails((found.s - 1) / Math.sqrt(165)), 12);
  });

  // Kendall 1970: 10 values with one tie of two have the variance (10·9·25 − 2·1·9)/18 = 124.
  test("a tie has its smaller variance", () => {
    const tied = [...y.slice(0, 9), y[8]!];
    expect(mannKendall(series(x, tied))).toMatchObject({ s: signs(x, tied), variance: 124 });
  });

  test("days with several throws", () => {
    const days = [1, 1, 1, 2, 2, 3, 4, 4, 5, 9, 9];
    const values = [3, 1, 2, 5, 1, 4, 4, 8, 2, 9, 7];
    expect(mannKendall(series(days, values)).s).toBe(signs(days, values));
  });

  test("the smallest cases counted out by hand", () => {
    expect(mannKendall(series([1, 2, 3], [4, 5, 6])).p).toBeCloseTo(2 / 6, 12);
    expect(mannKendall(series([1, 2], [4, 5])).p).toBe(1);
  });

  test("nothing to tell", () => {
    expect(mannKendall(series([], []))).toMatchObject({ s: 0, p: 1 });
    expect(mannKendall(series([1], [5]))).toMatchObject({ s: 0, p: 1 });
    expect(mannKendall(series([1, 2, 3], [5, 5, 5]))).toMatchObject({ s: 0, p: 1 });
  });

  test("above the median slope fewer pairs rise, below it more", () => {
    expect(rising(series(x, y), slope + 0.01)).toBeLessThan(0);
    expect(rising(series(x, y), slope - 0.01)).toBeGreaterThan(0);
  });

  test("falling pairs", () => {
    const counts = [[], [1], [1, 1], [3, 1, 2], [5, 4, 3, 2, 1]].map((values) =>
      inversions(Float64Array.from(values)),
    );
    expect(counts).toEqual([0, 0, 0, 2, 10]);
  });
});

describe("the latest throws", () => {
  test("in order of date, those of one day in the order of the log", () => {
    const { days, values } = latest(
      Float64Array.of(5, 3, 9, 3, 5),
      Float64Array.of(1, 2, 3, 4, 5),
      9,
    );
    expect([...days]).toEqual([3, 3, 5, 5, 9]);
    expect([...values]).toEqual([2, 4, 1, 5, 3]);
  });

  test("no more than asked for", () => {
    expect([
      ...latest(Float64Array.of(5, 3, 9, 3, 5), Float64Array.of(1, 2, 3, 4, 5), 2).values,
    ]).toEqual([5, 3]);
    expect([...latest(Float64Array.of(3, 4, 9), Float64Array.of(1, 2, 3), 2).values]).toEqual([
      2, 3,
    ]);
    expect([...latest(Float64Array.of(7, 7, 7), Float64Array.of(1, 2, 3), 2).values]).toEqual([
      2, 3,
    ]);
  });
});

describe("a disc", () => {
  const log = (rows: unknown[][]) =>
    readThrows([["Date", "Disc", "Carry"], ...rows], DEFAULT_SETTINGS);
  const trendIn = (rows: unknown[][]) => trendOf(" copper MID", log(rows), DEFAULT_SETTINGS);
  const steps = [0, 12, 21, 35, 44, 52];

  test("that loses 1 ft in 2 days is changing, at that rate", () => {
    const trend = trendIn(steps.map((day) => [46000 + day, "Copper mid", 300 - day / 2]));
    expect(trend.verdict).toBe("changing");
    expect(trend.throws).toBe(6);
    // 30.436875 days a month in the Gregorian calendar.
    expect(trend.changePerMonthM! / 0.3048).toBeCloseTo(-30.436875 / 2, 9);
    // Of 720 orders of 6, two are as one-sided as this.
    expect(trend.p).toBeCloseTo(2 / 720, 12);
  });

  test("that loses less than 3 % over the span is steady, however sure that is", () => {
    const trend = trendIn(steps.map((day) => [46000 + day, "Copper mid", 300 - day / 8]));
    expect(trend).toMatchObject({ verdict: "steady", p: expect.closeTo(2 / 720, 12) });
  });

  test("without order is steady", () => {
    const carries = [300, 280, 310, 290, 305, 285];
    expect(trendIn(steps.map((day, i) => [46000 + day, "Copper mid", carries[i]])).verdict).toBe(
      "steady",
    );
  });

  test("of too few throws, or too few days, is neither", () => {
    expect(
      trendIn(steps.slice(0, 4).map((day) => [46000 + day, "Copper mid", 300 - day])),
    ).toMatchObject({
      verdict: "too few",
      throws: 4,
    });
    expect(trendIn(steps.map((day) => [46000 + day / 2, "Copper mid", 300 - day])).verdict).toBe(
      "too few",
    );
  });

  test("without dates says nothing of change", () => {
    expect(trendIn([["", "Copper mid", 300]])).toEqual({
      verdict: "too few",
      changePerMonthM: null,
      p: null,
      throws: 0,
    });
  });

  test("that is not there is not available, with the reason where there is one", () => {
    expect(() => trendIn([])).toThrow("No throw of 'copper MID' counts.");
    expect(() => trendIn([["", "Copper mid", "abc"]])).toThrow(/counts. Row 2: carry is text/);
  });

  test("has the verdict of its card: no values, no verdict", () => {
    expect(verdictOf(series([], []))).toBe("too few");
  });
});
