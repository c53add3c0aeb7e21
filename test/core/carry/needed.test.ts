import { neededThrows, knownToM } from "../../../src/core/carry/needed";
import { tQuantile } from "../../../src/core/carry/student";
import type { CardRow } from "../../../src/core/types";

const row: CardRow = {
  disc: "Copper mid",
  type: null,
  line: "",
  softest: 0.8,
  inBag: true,
  mu: Math.log(90),
  scale: 0.06,
  freedom: 7,
  evidence: 4,
  side: { biasRad: 0, scaleRad: 0.06, freedom: 4, throws: 0 },
  throws: 4,
  leftOut: 0,
  lastDay: null,
  verdict: "too few",
};

/** The definition, tried one by one: the least n with t(d0 + n − 1)·scale·carry/√n ≤ margin, d0 = 4. */
const byTrying = (marginM: number): number => {
  let n = 4;
  while ((tQuantile(0.9, 4 + n - 1) * 0.06 * 90) / Math.sqrt(n) > marginM) n++;
  return n - 4;
};

describe("throws still needed", () => {
  test.each([0.5, 1, 1.7, 2.5, 3])("to ± %d m, as by trying", (marginM) => {
    expect(neededThrows(row, marginM)).toBe(byTrying(marginM));
  });

  test("none where the margin is met already", () => {
    expect(neededThrows(row, knownToM(row))).toBe(0);
    expect(neededThrows(row, 1000)).toBe(0);
  });

  test("a margin that makes no sense, or that nobody reaches", () => {
    for (const margin of [0, -1, NaN]) expect(() => neededThrows(row, margin)).toThrow("above 0");
    expect(() => neededThrows(row, 1e-9)).toThrow("so small a margin");
  });
});
