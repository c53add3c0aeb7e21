/** What rounds teach about slope, wind, and how the course differs from the field. */
import { rowOf } from "../carry/levelThrows";
import { fieldForm, powerSpread } from "../choice/courseForm";
import { DomainError, unavailable } from "../errors";
import { type Conditions, conditionsOf, FULL_EFFECT } from "../flight/air";
import { playsLikeParts } from "../flight/playsLike";
import { messages } from "../messages";
import type { Card, CardRow, LeftOut, RoundRow, Settings } from "../types";
import { courseFactors, type Belief } from "./courseFactors";
import type { CourseThrow } from "./courseThrow";

/** A row tells of slope or wind where their part in its plays-like distance is more than this, m. */
const NOTICEABLE_M = 0.01;

/** A factor, one standard deviation of it, and how many rows tell of it. */
export interface Learnt {
  readonly value: number;
  readonly sd: number;
  readonly rows: number;
}

/** Each as its setting has it. */
export interface Factors {
  /** How much of the modelled effect of rise and air, of headwind and of tailwind, this player meets. */
  readonly uphill: Learnt;
  readonly headwind: Learnt;
  readonly tailwind: Learnt;
  /** Carry on the course over carry in the field. */
  readonly courseCarry: Learnt;
  /** What the course adds to the spread of ln carry, and of the sideways angle in rad, in quadrature. */
  readonly courseSpread: Learnt;
  readonly courseSide: Learnt;
  /** How many times as far throws scatter along the line on the course as in the field. */
  readonly scatter: number;
  /** Rows that could not be used, and why. */
  readonly leftOut: readonly LeftOut[];
}

/**
 * Factors learnt from rounds, as the settings take them. Each is the mode of its posterior, in ln where
 * it cannot be below 0, with a standard deviation by Laplace's approximation; see `addThrow` for the
 * likelihood, `COURSE_PRIOR` for what is believed before any round.
 *
 * The factors in force do not matter to the answer, save that the card itself was levelled by them.
 *
 * @param rounds Throws on the course with any of finish, offline, in or out of the circle.
 * @param card What the field says of the discs.
 * @param settings Their air and circle.
 * @returns Factors with the number of rows that tell of each. Rows of discs that the card does not
 * have, or without a flight, are left out with the reason.
 * @throws `unavailable` where no row is left.
 * @example
 * learnFactors(rounds, card, settings).uphill // { value: 1.12, sd: 0.21, rows: 18 }
 */
export function learnFactors(rounds: readonly RoundRow[], card: Card, settings: Settings): Factors {
  const conditions = plainConditions(settings);
  const throws: CourseThrow[] = [];
  const leftOut: LeftOut[] = [];
  for (const round of rounds) {
    try {
      throws.push(courseThrow(round, rowOf(card, round.disc), conditions, settings.circleM));
    } catch (thrown) {
      if (!(thrown instanceof DomainError)) throw thrown;
      leftOut.push({ row: round.row, disc: round.disc, reason: thrown.message });
    }
  }
  if (throws.length === 0) throw unavailable(whyNone(leftOut));
  const found = courseFactors(throws);
  const along = throws.filter(({ finishM, inCircle }) => finishM !== null || inCircle !== null);
  const sideways = throws.filter(
    ({ finishM, offlineM, inCircle }) =>
      offlineM !== null || (finishM === null && inCircle !== null),
  );
  const windy = along.filter(({ windM }) => Math.abs(windM) > NOTICEABLE_M);
  const fieldSpread = card.population.scale;
  const courseSpread = fromLn(found.lnCourseSpread, along.length);
  return {
    uphill: plain(
      found.uphill,
      along.filter(({ slopeM }) => Math.abs(slopeM) > NOTICEABLE_M).length,
    ),
    headwind: plain(found.headwind, windy.filter(({ tailwind }) => !tailwind).length),
    tailwind: plain(found.tailwind, windy.filter(({ tailwind }) => tailwind).length),
    courseCarry: fromLn(found.lnCourseCarry, along.length),
    courseSpread,
    courseSide: fromLn(found.lnCourseSide, sideways.length),
    scatter: Math.hypot(fieldSpread, courseSpread.value) / fieldSpread,
    leftOut,
  };
}

/** The air of the settings, without any factor of the player's. */
const plainConditions = (settings: Settings): Conditions => ({
  ...conditionsOf(settings),
  ...FULL_EFFECT,
});

function courseThrow(
  round: RoundRow,
  row: CardRow,
  conditions: Conditions,
  circleM: number,
): CourseThrow {
  const { distanceM, headwindMps, power, finishM, offlineM, inCircle } = round;
  const { slopeM, windM, airM } = playsLikeParts(round, conditions, row.type);
  const { centre, scale } = powerSpread(fieldForm(row), power);
  return {
    distanceM,
    slopeM: slopeM + airM,
    windM,
    tailwind: headwindMps < 0,
    lnCarry: centre,
    spread: scale,
    sideSpread: row.side.scaleRad,
    finishM,
    offlineM,
    offlineRad: offlineM === null ? null : Math.atan2(offlineM, distanceM) - row.side.biasRad,
    inCircle,
    circleM,
  };
}

const plain = ({ mode, sd }: Belief, rows: number): Learnt => ({ value: mode, sd, rows });

/** What was learnt as a logarithm: the deviation follows to first order. */
const fromLn = ({ mode, sd }: Belief, rows: number): Learnt => ({
  value: Math.exp(mode),
  sd: Math.exp(mode) * sd,
  rows,
});

const whyNone = ([first]: readonly LeftOut[]): string =>
  first ? messages.learn.noneUsable(first.row, first.reason) : messages.learn.noRows();
