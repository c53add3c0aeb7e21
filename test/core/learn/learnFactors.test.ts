import { playsLikeParts } from "../../../src/core/flight/playsLike";
import { conditionsOf, FULL_EFFECT } from "../../../src/core/flight/air";
import { learnFactors } from "../../../src/core/learn/learnFactors";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import type { RoundRow } from "../../../src/core/types";
import { cardOf, disc, settingsWith } from "../../support/cards";

const settings = DEFAULT_SETTINGS;
const mid = disc("Copper mid", 90, { type: "midrange", scale: 0.06, freedom: 8 });
const driver = disc("Violet driver", 120, { type: "distance", scale: 0.08, freedom: 5 });
const card = cardOf(mid, driver);

/** Medians and 0.9 quantiles of t over that of the normal: any handbook. */
const WIDENING = { "Copper mid": 1.396815 / 1.2815516, "Violet driver": 1.475884 / 1.2815516 };

const rowOf = (name: string) => (name === mid.disc ? mid : driver);
const parts = (round: RoundRow) =>
  playsLikeParts(round, { ...conditionsOf(settings), ...FULL_EFFECT }, rowOf(round.disc).type);
const shot = (
  name: keyof typeof WIDENING,
  distanceM: number,
  riseM: number,
  headwindMps: number,
  finishM = 0,
  row = 2,
): RoundRow => ({
  ...{ row, course: "", disc: name, power: 1, distanceM, riseM, headwindMps, finishM },
  ...{ offlineM: null, inCircle: null },
});

/** By Cramer's rule on the normal equations, written out for three unknowns. */
function byCramer(rounds: readonly RoundRow[]) {
  const precision = [
    [1 / 0.05 ** 2, 0, 0],
    [0, 1 / 0.3 ** 2, 0],
    [0, 0, 1 / 0.5 ** 2],
  ];
  const pull = [0, 1 / 0.3 ** 2, 1 / 0.5 ** 2];
  for (const round of rounds) {
    const { slopeM, windM, airM, totalM } = parts(round);
    const carryM = round.power * Math.exp(rowOf(round.disc).mu);
    const sd = carryM * rowOf(round.disc).scale * WIDENING[round.disc as keyof typeof WIDENING];
    const x = [carryM, -slopeM, -windM - airM];
    const y = (round.finishM! * totalM) / round.distanceM + round.distanceM - carryM;
    for (let i = 0; i < 3; i++) {
      pull[i]! += (x[i]! * y) / sd ** 2;
      for (let j = 0; j < 3; j++) precision[i]![j]! += (x[i]! * x[j]!) / sd ** 2;
    }
  }
  const det = (m: number[][]): number =>
    m[0]![0]! * (m[1]![1]! * m[2]![2]! - m[1]![2]! * m[2]![1]!) -
    m[0]![1]! * (m[1]![0]! * m[2]![2]! - m[1]![2]! * m[2]![0]!) +
    m[0]![2]! * (m[1]![0]! * m[2]![1]! - m[1]![1]! * m[2]![0]!);
  const whole = det(precision);
  return [0, 1, 2].map((k) => {
    const replaced = precision.map((row, i) => row.map((v, j) => (j === k ? pull[i]! : v)));
    const [p, q] = [0, 1, 2].filter((i) => i !== k) as [number, number];
    const minor = precision[p]![p]! * precision[q]![q]! - precision[p]![q]! * precision[q]![p]!;
    return { mean: det(replaced) / whole, sd: Math.sqrt(minor / whole) };
  });
}

describe("learnt factors", () => {
  test("three rows, as the normal equations solved by Cramer's rule", () => {
    const rounds = [
      shot("Copper mid", 85, 5, 0, -6),
      shot("Violet driver", 110, -4, 3, 9),
      shot("Copper mid", 92, 0, -2, 3),
    ];
    const found = learnFactors(rounds, card, settings);
    const [course, uphill, wind] = byCramer(rounds);
    for (const [learnt, plain] of [
      [found.course, course],
      [found.uphill, uphill],
      [found.wind, wind],
    ] as const) {
      expect(learnt.mean).toBeCloseTo(plain!.mean, 6);
      expect(learnt.sd).toBeCloseTo(plain!.sd, 6);
    }
    expect([found.course.rows, found.uphill.rows, found.wind.rows]).toEqual([3, 2, 2]);
  });

  test("finds the factors that rounds were made with", () => {
    const truth = { course: 0.04, uphill: 1.25, wind: 0.7 };
    const rounds: RoundRow[] = [];
    for (let i = 0; i < 240; i++) {
      const name = i % 2 ? "Copper mid" : "Violet driver";
      const made = shot(name, 80 + (i % 7) * 6, ((i % 9) - 4) * 1.5, ((i % 5) - 2) * 2, 0, i + 2);
      const { distanceM, slopeM, windM, airM, totalM } = parts(made);
      const carryM = Math.exp(rowOf(name).mu) * (1 + truth.course);
      const asked = distanceM + truth.uphill * slopeM + truth.wind * (windM + airM);
      // Noise that sums to nothing: the same miss long and short in turn.
      const noiseM = Math.floor(i / 2) % 2 ? 3 : -3;
      rounds.push({ ...made, finishM: ((carryM - asked + noiseM) * distanceM) / totalM });
    }
    const found = learnFactors(rounds, card, settings);
    for (const factor of ["course", "uphill", "wind"] as const) {
      expect(Math.abs(found[factor].mean - truth[factor])).toBeLessThan(2.5 * found[factor].sd);
      expect(found[factor].sd).toBeLessThan(0.15);
    }
  });

  test("do not depend on the factors in force or on the order of rows", () => {
    const rounds = [shot("Copper mid", 85, 5, 2, -6), shot("Violet driver", 110, -4, 3, 9)];
    const found = learnFactors(rounds, card, settings);
    const inForce = settingsWith({ uphillFactor: 1.4, headwindFactor: 0.5 });
    expect(learnFactors(rounds, card, inForce)).toEqual(found);
    const turned = learnFactors([...rounds].reverse(), card, settings);
    expect(turned.uphill.mean).toBeCloseTo(found.uphill.mean, 12);
  });

  test("level and calm rows leave slope and wind as believed before", () => {
    const { uphill, wind } = learnFactors([shot("Copper mid", 90, 0, 0, 2)], card, settings);
    expect(uphill.mean).toBeCloseTo(1, 12);
    expect(uphill.sd).toBeCloseTo(0.3, 12);
    expect(uphill.rows).toBe(0);
    expect(wind.mean).toBeCloseTo(1, 12);
    expect(wind.sd).toBeCloseTo(0.5, 12);
  });

  test("rows of discs that are not known are left out and named; none left is said", () => {
    const strange: RoundRow = { ...shot("Copper mid", 90, 0, 0), disc: "Grey mid", row: 7 };
    const found = learnFactors([shot("Copper mid", 90, 3, 0), strange], card, settings);
    expect(found.course.rows).toBe(1);
    expect(found.leftOut).toEqual([
      { row: 7, disc: "Grey mid", reason: expect.stringContaining("Grey mid") },
    ]);
    expect(() => learnFactors([strange], card, settings)).toThrow("Row 7");
    expect(() => learnFactors([], card, settings)).toThrow("no rounds");
  });
});
