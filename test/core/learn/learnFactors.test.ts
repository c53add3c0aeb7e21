/** From rounds to factors; the learning itself is checked in courseFactors.test.ts. */
import jstat from "jstat";
import { conditionsOf, FULL_EFFECT } from "../../../src/core/flight/air";
import { playsLikeParts } from "../../../src/core/flight/playsLike";
import { learnFactors } from "../../../src/core/learn/learnFactors";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import type { RoundRow } from "../../../src/core/types";
import { cardOf, disc, settingsWith } from "../../support/cards";

const settings = DEFAULT_SETTINGS;
const mid = disc("Copper mid", 90, { type: "midrange", scale: 0.06, freedom: 8 });
const driver = disc("Violet driver", 120, { type: "distance", scale: 0.08, freedom: 5 });
const card = cardOf(mid, driver);

const rowOf = (name: string) => (name === mid.disc ? mid : driver);
const parts = (round: RoundRow) =>
  playsLikeParts(round, { ...conditionsOf(settings), ...FULL_EFFECT }, rowOf(round.disc).type);
const shot = (
  name: string,
  distanceM: number,
  riseM: number,
  headwindMps: number,
  finishM: number | null = 0,
  row = 2,
): RoundRow => ({
  ...{ row, day: null, course: "", hole: "", disc: name, power: 1 },
  ...{ distanceM, riseM, headwindMps, finishM, offlineM: null, inCircle: null },
});

const FACTORS = ["uphill", "headwind", "tailwind", "courseCarry", "courseSpread"] as const;

/**
 * Rounds drawn by the model's own statement: D*(1 + finish/D) = p·C·e^g·e^noise, with noise on the
 * quantiles of a known spread, shuffled by a step that shares no factor with the count.
 */
function roundsOf(truth: Record<(typeof FACTORS)[number], number>, count: number): RoundRow[] {
  return Array.from({ length: count }, (_, i) => {
    const name = i % 2 ? mid.disc : driver.disc;
    const made = shot(name, 80 + (i % 7) * 6, ((i % 9) - 4) * 1.5, ((i % 5) - 2) * 2, 0, i + 2);
    const { distanceM, slopeM, windM, airM } = parts(made);
    const wind = made.headwindMps < 0 ? truth.tailwind : truth.headwind;
    const playsM = distanceM + truth.uphill * (slopeM + airM) + wind * windM;
    const field = rowOf(name).scale * Math.sqrt(1 + 1 / rowOf(name).evidence);
    const noise = Math.hypot(field, truth.courseSpread) * quantile((i * 89) % count, count);
    const carryM = Math.exp(rowOf(name).mu + noise) * truth.courseCarry;
    return { ...made, finishM: (carryM / playsM - 1) * distanceM };
  });
}

/** Of t with 8 degrees of freedom, as the errors of the model are. */
const quantile = (i: number, count: number): number => jstat.studentt.inv((i + 0.5) / count, 8);

describe("learnt factors", () => {
  test("are those that rounds were made with", () => {
    const truth = {
      uphill: 1.25,
      headwind: 0.7,
      tailwind: -0.4,
      courseCarry: 1.04,
      courseSpread: 0.09,
    };
    const found = learnFactors(roundsOf(truth, 241), card, settings);
    for (const factor of FACTORS) {
      expect(Math.abs(found[factor].value - truth[factor])).toBeLessThan(2.5 * found[factor].sd);
      expect(found[factor].sd).toBeLessThan(0.3);
    }
    expect(found.headwind.rows).toBe(96);
  });

  test("do not depend on the factors in force or on the order of rows", () => {
    const rounds = [shot("Copper mid", 85, 5, 2, -6), shot("Violet driver", 110, -4, -3, 9)];
    const found = learnFactors(rounds, card, settings);
    const inForce = settingsWith({
      ...{ uphillFactor: 1.4, headwindFactor: 0.5, tailwindFactor: 1 },
      ...{ courseCarry: 0.9, courseSpread: 0.2, courseSideRad: 0.2 },
    });
    expect(learnFactors(rounds, card, inForce)).toEqual(found);
    const turned = learnFactors([...rounds].reverse(), card, settings);
    for (const factor of FACTORS) expect(turned[factor].value).toBeCloseTo(found[factor].value, 6);
  });

  test("level and calm rows leave slope and wind as believed before", () => {
    const found = learnFactors([shot("Copper mid", 90, 0, 0, 2)], card, settings);
    expect(found.uphill).toEqual({
      value: expect.closeTo(1, 9),
      sd: expect.closeTo(0.3, 6),
      rows: 0,
    });
    expect(found.headwind.value).toBeCloseTo(1, 9);
    expect(found.tailwind).toEqual({
      value: expect.closeTo(0, 9),
      sd: expect.closeTo(0.7, 6),
      rows: 0,
    });
    expect([found.courseCarry.rows, found.courseSpread.rows, found.courseSide.rows]).toEqual([
      ...[1, 1, 0],
    ]);
  });

  test("in or out alone, and offline alone, teach what they can", () => {
    const base = shot("Copper mid", 90, 0, 0, null);
    const outs = Array.from({ length: 12 }, () => ({ ...base, inCircle: false }));
    const ins = outs.map((row) => ({ ...row, inCircle: true }));
    const spread = (rounds: RoundRow[]) => learnFactors(rounds, card, settings).courseSpread;
    expect(spread(outs).value).toBeGreaterThan(0.0735);
    expect(spread(ins).value).toBeLessThan(0.0735);
    expect(spread(ins).rows).toBe(12);
    const wide = outs.map((row) => ({ ...row, inCircle: null, offlineM: 18 }));
    const found = learnFactors(wide, card, settings);
    expect(found.courseSide.value).toBeGreaterThan(0.063);
    expect(found.courseSpread.value).toBeCloseTo(0.0735, 9);
    expect([found.courseSide.rows, found.courseSpread.rows]).toEqual([12, 0]);
  });

  test("an offline that is the disc's own bias is no miss", () => {
    const biased = { ...mid, side: { ...mid.side, biasRad: Math.atan2(8, 90) } };
    const wide = { ...shot("Copper mid", 90, 0, 0, null), offlineM: 8 };
    const straight = { ...shot("Copper mid", 90, 0, 0, null), offlineM: 0 };
    expect(learnFactors([wide], cardOf(biased), settings).courseSide).toEqual(
      learnFactors([straight], card, settings).courseSide,
    );
  });

  test("rows of discs that are not known are left out and named; none left is said", () => {
    const strange: RoundRow = { ...shot("Copper mid", 90, 0, 0), disc: "Grey mid", row: 7 };
    const found = learnFactors([shot("Copper mid", 90, 3, 0), strange], card, settings);
    expect(found.courseCarry.rows).toBe(1);
    expect(found.leftOut).toEqual([
      { row: 7, disc: "Grey mid", reason: expect.stringContaining("Grey mid") },
    ]);
    expect(() => learnFactors([strange], card, settings)).toThrow("Row 7");
    expect(() => learnFactors([], card, settings)).toThrow("no rounds");
  });
});
