/** Whether the chances that were told came true. */
import { rowOf } from "../carry/levelThrows";
import { normalTwoTails } from "../carry/student";
import { chanceOf } from "../choice/chance";
import { courseForm } from "../choice/courseForm";
import { targetsOf } from "../choice/target";
import { LEAST_ROWS_TO_JUDGE, NORMAL_UPPER_TENTH } from "../constants";
import { DomainError, unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { messages } from "../messages";
import type { Card, LeftOut, RoundRow, Settings } from "../types";

/** A chance that was told, and whether it happened. */
export interface Told {
  readonly chance: number;
  readonly happened: boolean;
}

/** Some rows together: what was told on average, and the share that happened with its 80 % interval. */
export interface Tally {
  readonly rows: number;
  readonly told: number;
  readonly happened: number;
  readonly low: number;
  readonly high: number;
}

export type CalibrationVerdict =
  "too few" | "fits" | "too high" | "too low" | "too sure" | "too cautious";

export interface Calibration extends Tally {
  /** Mean squared difference of the chance told and what happened (1 or 0). */
  readonly brier: number;
  /** Two-sided p of Spiegelhalter's z: small where the chances cannot be right. */
  readonly p: number;
  readonly verdict: CalibrationVerdict;
  readonly sentence: string;
  /** Rows of like chances together, the lowest first, for a picture of told against happened. */
  readonly bins: readonly Tally[];
  readonly leftOut: readonly LeftOut[];
}

/** Below this p the chances are called wrong: about one true log in twenty is, too. */
const SIGNIFICANT = 0.05;
/** A bin holds at least so many rows, and there are at most so many bins. */
const LEAST_IN_BIN = 5;
const MOST_BINS = 6;

/**
 * Did it come true? For the rounds that say whether the throw finished in the circle, by In circle or
 * by finish and offline together, the chance that the settings tell now for that disc at that power.
 * A row with a finish alone is not asked: only its far misses would say anything.
 *
 * @param rounds Throws on the course.
 * @param card What the field says of the discs.
 * @param settings Course spread, factors, air and circle to tell the chances by.
 * @returns Told and happened with Wilson's 80 % interval, Brier score, p and a verdict in words. Rows
 * of discs that the card does not have, or without a flight, are left out with the reason.
 * @throws `unavailable` where no row says in or out.
 * @example
 * calibration(rounds, card, settings).sentence
 * // "In the circle: told 58 %, happened 55 % (45 to 65 %), 40 throws. The chances fit."
 */
export function calibration(
  rounds: readonly RoundRow[],
  card: Card,
  settings: Settings,
): Calibration {
  const told: Told[] = [];
  const leftOut: LeftOut[] = [];
  for (const round of rounds) {
    const happened = finishedInCircle(round, settings.circleM);
    if (happened === null) continue;
    try {
      told.push({ chance: chanceTold(round, card, settings), happened });
    } catch (thrown) {
      if (!(thrown instanceof DomainError)) throw thrown;
      leftOut.push({ row: round.row, disc: round.disc, reason: thrown.message });
    }
  }
  if (told.length === 0) {
    const [first] = leftOut;
    throw unavailable(
      first ? messages.learn.noneUsable(first.row, first.reason) : messages.learn.noneInOrOut(),
    );
  }
  return { ...calibrationOf(told), leftOut };
}

/** Whether a throw finished within the circle; null where the row does not say. */
export function finishedInCircle(
  { finishM, offlineM, inCircle }: RoundRow,
  circleM: number,
): boolean | null {
  if (inCircle !== null) return inCircle;
  if (finishM === null || offlineM === null) return null;
  return Math.hypot(finishM, offlineM) <= circleM;
}

/** The chance of the circle for a throw on the course, by the settings; throws `unavailable` without one. */
function chanceTold(round: RoundRow, card: Card, settings: Settings): number {
  const row = rowOf(card, round.disc);
  const target = targetsOf(round, conditionsOf(settings))(row);
  if (!target) throw unavailable(messages.flight.outOfReach());
  return chanceOf(courseForm(row, settings), target, settings.circleM)(round.power);
}

/**
 * `calibration` of chances as they are. At least one.
 *
 * Wilson 1927, J. Am. Stat. Assoc. 22:209, for the interval; Brier 1950, Mon. Weather Rev. 78:1;
 * Spiegelhalter 1986, Stat. Med. 5:421: z = Σ(y − p)(1 − 2p) / √Σ(1 − 2p)²p(1 − p).
 */
export function calibrationOf(told: readonly Told[]): Omit<Calibration, "leftOut"> {
  const tally = tallyOf(told);
  const brier = told.reduce((sum, one) => sum + (one.chance - Number(one.happened)) ** 2, 0);
  const z = spiegelhalter(told);
  const p = normalTwoTails(z);
  const verdict = verdictOf(tally, z, p);
  return {
    ...tally,
    brier: brier / told.length,
    p,
    verdict,
    sentence: sentenceOf(tally, verdict),
    bins: binsOf(told),
  };
}

function tallyOf(told: readonly Told[]): Tally {
  const rows = told.length;
  const happened = told.filter((one) => one.happened).length / rows;
  const square = NORMAL_UPPER_TENTH ** 2;
  const middle = (happened + square / (2 * rows)) / (1 + square / rows);
  const half =
    (NORMAL_UPPER_TENTH / (1 + square / rows)) *
    Math.sqrt((happened * (1 - happened)) / rows + square / (4 * rows * rows));
  return {
    rows,
    told: told.reduce((sum, { chance }) => sum + chance, 0) / rows,
    happened,
    low: Math.max(0, middle - half),
    high: Math.min(1, middle + half),
  };
}

/** 0 where no chance can be proved wrong, as when all are one half. */
function spiegelhalter(told: readonly Told[]): number {
  let excess = 0;
  let variance = 0;
  for (const { chance, happened } of told) {
    const tilt = 1 - 2 * chance;
    excess += (Number(happened) - chance) * tilt;
    variance += tilt * tilt * chance * (1 - chance);
  }
  return variance > 0 ? excess / Math.sqrt(variance) : 0;
}

function verdictOf({ rows, told, low, high }: Tally, z: number, p: number): CalibrationVerdict {
  if (rows < LEAST_ROWS_TO_JUDGE) return "too few";
  if (p >= SIGNIFICANT) return "fits";
  if (told > high) return "too high";
  if (told < low) return "too low";
  return z > 0 ? "too sure" : "too cautious";
}

const WORDS: Record<CalibrationVerdict, string> = {
  "too few": `Too few to judge: it takes ${LEAST_ROWS_TO_JUDGE} throws.`,
  fits: "The chances fit.",
  "too high": "The chances are too high for you: use what your rounds teach.",
  "too low": "The chances are too low for you: use what your rounds teach.",
  "too sure":
    "High chances came true too rarely, or low ones too often: use what your rounds teach.",
  "too cautious":
    "High chances came true more often than told, low ones less: use what your rounds teach.",
};

function sentenceOf(
  { rows, told, happened, low, high }: Tally,
  verdict: CalibrationVerdict,
): string {
  const percent = (share: number): string => `${Math.round(100 * share)}`;
  const throws = rows === 1 ? "1 throw" : `${rows} throws`;
  return `In the circle: told ${percent(told)} %, happened ${percent(happened)} % (${percent(low)} to ${percent(high)} %), ${throws}. ${WORDS[verdict]}`;
}

/** As many rows in each as can be, in order of chance. */
function binsOf(told: readonly Told[]): Tally[] {
  const sorted = [...told].sort((one, other) => one.chance - other.chance);
  const count = Math.min(MOST_BINS, Math.max(1, Math.floor(sorted.length / LEAST_IN_BIN)));
  return Array.from({ length: count }, (_, bin) =>
    tallyOf(
      sorted.slice(
        Math.round((bin * sorted.length) / count),
        Math.round(((bin + 1) * sorted.length) / count),
      ),
    ),
  );
}
