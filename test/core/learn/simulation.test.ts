/**
 * Players whose truth is known throw rounds, drawn by a seed and by the model's statement: do the
 * intervals of LEARN hold the truth as often as they say, does the chance that is told come near it, and
 * does CALIBRATION leave chances that are true alone? The bounds are what we ask of ourselves; the true
 * chance is summed up with jstat's Student t. A few logs here, all of them in `npm run test:long`.
 */
import { chanceOf } from "../../../src/core/choice/chance";
import { courseForm } from "../../../src/core/choice/courseForm";
import { conditionsOf, FULL_EFFECT } from "../../../src/core/flight/air";
import { playsLikeParts } from "../../../src/core/flight/playsLike";
import { calibration } from "../../../src/core/learn/calibration";
import { type Factors, learnFactors } from "../../../src/core/learn/learnFactors";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import type { RoundRow } from "../../../src/core/types";
import { cardOf, disc, settingsWith } from "../../support/cards";
import { drawT, seeded } from "../../support/draws";
import { plainChance } from "../../support/plainChance";

const LONG = Boolean(process.env.CARRYBOOK_LONG);
const LOGS = LONG ? 1000 : 50;
const JUDGED_LOGS = LONG ? 4000 : 300;

/** What is asked of many logs; of few, chance itself takes its share. */
const [LEAST_COVERED, MOST_COVERED] = LONG ? [0.65, 0.95] : [0.6, 0.97];
const MOST_ERROR: Record<number, number> = { 40: 0.07, 120: 0.04 };
const [LEAST_ALARMS, MOST_ALARMS] = LONG ? [0.02, 0.08] : [0.01, 0.1];

/** The long run is for its figures. */
const tell = (figures: object): void => void (LONG && console.log(JSON.stringify(figures)));

// The player: in the field spreads of 0.07 along and 0.06 sideways, known well.

const SPREAD = 0.07;
const SIDE = 0.06;
const ALONG_FREEDOM = 8;
const SIDE_FREEDOM = 6;
const SOFTNESS = 0.15;
const CARRIES_M: Record<string, number> = {
  "Violet driver": 104,
  "Copper mid": 88.1,
  "Moss putter": 66,
};
const card = cardOf(
  ...Object.entries(CARRIES_M).map(([name, carryM]) =>
    disc(name, carryM, {
      ...{ type: "midrange", scale: SPREAD, freedom: ALONG_FREEDOM },
      side: { biasRad: 0, scaleRad: SIDE, freedom: SIDE_FREEDOM, throws: 99 },
    }),
  ),
);

/** On the course this player's throws go 3 % farther, and meet slope and wind a little otherwise than the model says. */
const COURSE_CARRY = 1.03;
const [UPHILL, HEADWIND, TAILWIND] = [1.2, 0.8, 0.3];

// Rounds as that player throws them.

const plain = { ...conditionsOf(DEFAULT_SETTINGS), ...FULL_EFFECT };
const nth = <Item>(items: readonly Item[], share: number): Item =>
  items[Math.floor(share * items.length)]!;

/** What is asked of a throw: three discs at what they are for, on slopes and in winds of all kinds. */
const SHOTS = Array.from({ length: 36 }, (_, at) => {
  const name = Object.keys(CARRIES_M)[at % 3]!;
  const power = [1, 0.9, 0.95, 0.85][at % 4]!;
  const riseM = [0, -6, 4, 8, -3][at % 5]!;
  const headwindMps = [0, 3, -4, 0, 5, -2, 1][at % 7]!;
  const distanceM = Math.round(CARRIES_M[name]! * power * (1 + ((at % 4) - 1) * 0.02));
  const shot = { distanceM, riseM, headwindMps };
  return { name, power, ...shot, parts: playsLikeParts(shot, plain, "midrange") };
});

function throwOne(times: number, row: number, next: () => number): RoundRow {
  const { name, power, parts, ...shot } = nth(SHOTS, next());
  const { distanceM, headwindMps } = shot;
  const wind = headwindMps < 0 ? TAILWIND : HEADWIND;
  const playsM = distanceM + UPHILL * (parts.slopeM + parts.airM) + wind * parts.windM;
  const scale = Math.hypot(SPREAD * times, SOFTNESS * (1 - power));
  const carryM = CARRIES_M[name]! * power * COURSE_CARRY;
  const wentM = carryM * Math.exp(scale * drawT(ALONG_FREEDOM, next));
  return {
    ...{ row, day: null, course: "", hole: "", disc: name, power, ...shot, inCircle: null },
    finishM: distanceM * (wentM / playsM - 1),
    offlineM: distanceM * Math.tan(SIDE * times * drawT(SIDE_FREEDOM, next)),
  };
}

const roundsOf = (times: number, count: number, next: () => number): RoundRow[] =>
  Array.from({ length: count }, (_, at) => throwOne(times, at + 2, next));

// What is told of them.

const FT_289_M = 88.0872;
const CIRCLE_M = 10;
const mid = card.rows.find(({ disc: name }) => name === "Copper mid")!;

const NORMAL_90 = 1.2816;

/** Whether the 80 % interval of the course spread, which is learnt as a logarithm, holds the truth. */
function holdsScatter({ courseSpread: { value, sd } }: Factors, times: number): boolean {
  const reach = Math.exp((NORMAL_90 * sd) / value);
  const scatter = (spread: number): number => Math.hypot(SPREAD, spread) / SPREAD;
  return scatter(value / reach) <= times && times <= scatter(value * reach);
}

/** By how much the chance at 289 ft, with the mid thrown smooth, is told too high. */
function errorAt289({ courseSpread, courseSide, courseCarry }: Factors, times: number): number {
  const learnt = settingsWith({
    ...{ courseSpread: courseSpread.value, courseSideRad: courseSide.value },
    courseCarry: courseCarry.value,
  });
  const target = { distanceM: FT_289_M, playsLikeM: FT_289_M, playsLikeSdM: 0 };
  const told = chanceOf(courseForm(mid, learnt), target, learnt.circleM)(1);
  return told - trueChanceAt289(times);
}

function trueChanceAt289(times: number): number {
  const mu = mid.mu + Math.log(COURSE_CARRY);
  const side = { scaleRad: SIDE * times, freedom: SIDE_FREEDOM };
  const form = { mu, scale: SPREAD * times, freedom: ALONG_FREEDOM, side };
  return plainChance(form, FT_289_M, FT_289_M, 1, CIRCLE_M, 400);
}

/** Of many logs of so many rows: the share whose interval holds the truth, and the error of the chance. */
function learnMany(times: number, rows: number): { covered: number; error: number } {
  let covered = 0;
  let squares = 0;
  for (let log = 0; log < LOGS; log++) {
    const next = seeded(1 + log + 10_000 * rows + 10_000_000 * times);
    const found = learnFactors(roundsOf(times, rows, next), card, DEFAULT_SETTINGS);
    if (holdsScatter(found, times)) covered += 1;
    squares += errorAt289(found, times) ** 2;
  }
  return { covered: covered / LOGS, error: Math.sqrt(squares / LOGS) };
}

describe.each(LONG ? [1.2, 1.4, 2] : [1.4, 2])("throws that scatter %f times as far", (times) => {
  test.each(LONG ? [40, 120] : [40])("%i rows", (rows) => {
    const { covered, error } = learnMany(times, rows);
    tell({ times, rows, covered, error });
    expect(covered).toBeGreaterThan(LEAST_COVERED);
    expect(covered).toBeLessThan(MOST_COVERED);
    expect(error).toBeLessThan(MOST_ERROR[rows]!);
  });
});

// Did it come true?

/** Settings that know all of the truth, for a scatter of 1.4 times the field's. */
const added = (field: number): number => field * Math.sqrt(1.4 ** 2 - 1);
const knowing = settingsWith({
  ...{ uphillFactor: UPHILL, headwindFactor: HEADWIND, tailwindFactor: TAILWIND },
  ...{ uphillSd: 0, headwindSd: 0, tailwindSd: 0, courseCarry: COURSE_CARRY },
  ...{ courseSpread: added(SPREAD), courseSideRad: added(SIDE) },
});

/** The share of logs in which the chances that they tell are called wrong. */
function alarms(rows: number): number {
  let alarmed = 0;
  for (let log = 0; log < JUDGED_LOGS; log++) {
    const rounds = roundsOf(1.4, rows, seeded(1 + log + 10_000 * rows));
    if (calibration(rounds, card, knowing).verdict !== "fits") alarmed += 1;
  }
  return alarmed / JUDGED_LOGS;
}

test.each([30, 50])("true chances are rarely called wrong: %i rows", (rows) => {
  const share = alarms(rows);
  tell({ rows, alarms: share });
  expect(share).toBeGreaterThan(LEAST_ALARMS);
  expect(share).toBeLessThan(MOST_ALARMS);
});
