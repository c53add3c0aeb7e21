/** The form of a day: how much farther or shorter than the card the player throws. */
import {
  DAY_SPREAD,
  FORM_LEAST_DISCS,
  FORM_LEAST_THROWS,
  LEAST_DAYS_FOR_SPREAD,
  LEAST_DAY_SPREAD,
  MOST_DAY_SPREAD,
} from "../constants";
import { DomainError, unavailable } from "../errors";
import { discKey } from "../log/names";
import { messages } from "../messages";
import type { BagDisc, Settings, Throw, ThrowLog } from "../types";
import { makeCard } from "./card";
import { type Levelling, levelling } from "./levelThrows";

/** The throws of one day with one disc, against the card made without that day. */
export interface DayOfDisc {
  /** ln carry less the card's, one a throw. */
  readonly residuals: readonly number[];
  /** Spread of ln carry, and effective number of throws on other days. */
  readonly spread: number;
  readonly evidence: number;
}

/** How ln carry is shifted, with one standard deviation. */
export interface Shift {
  readonly shift: number;
  readonly sd: number;
}

export interface DayForm {
  readonly day: number;
  /** Carries of the day over those of the card, and one standard deviation of that. */
  readonly factor: number;
  readonly sd: number;
  /** Throws and discs that it rests on. */
  readonly throws: number;
  readonly discs: number;
}

/** A throw farther off than so many spreads counts as that far off: it says more of itself than of the day. */
const MOST_SPREADS = 2;
/** Each earlier day costs a card of its own; the latest ones say enough about how days differ. */
const MOST_EARLIER_DAYS = 20;

/**
 * How a day shifts ln carry: the mean over discs of their mean residuals, each weighted by how surely it
 * is known, v = spread²(1/throws + 1/evidence), and drawn to 0 by what is believed of days, N(0, daySd²).
 * A normal model with known variances (Gelman et al., Bayesian Data Analysis, 3rd edition, §2.5).
 *
 * @param discs One for each disc of the day, with at least one residual.
 * @param daySd Standard deviation of days, as a share; Infinity for none believed.
 * @returns The shift with its standard deviation; 0 ± daySd without discs.
 * @example
 * dayShift([{ residuals: [-0.05], spread: 0.05, evidence: 10 }], 0.04) // { shift: −0.0184, sd: 0.0318 }
 */
export function dayShift(discs: readonly DayOfDisc[], daySd: number): Shift {
  let pull = 0;
  let precision = daySd ** -2;
  for (const { residuals, spread, evidence } of discs) {
    const most = MOST_SPREADS * spread;
    const mean =
      residuals.reduce((sum, off) => sum + Math.max(-most, Math.min(most, off)), 0) /
      residuals.length;
    const weight = 1 / (spread ** 2 * (1 / residuals.length + 1 / evidence));
    pull += weight * mean;
    precision += weight;
  }
  return { shift: pull / precision, sd: precision ** -0.5 };
}

/**
 * How the throws of one day differ from the card made without that day, over the discs that were thrown
 * on other days as well. What is believed of days is 0 ± 4 %, or, from three earlier days of five throws
 * on, what those say.
 *
 * @param log All throws of the player.
 * @param bag Tells the types of discs, for levelling; may be empty.
 * @param settings Air, memory and spreads.
 * @param day Serial day; null for the newest in the log.
 * @throws `unavailable` where no throw has a date, where there is none of that day, and with
 * fewer than 5 throws or 3 discs.
 * @example
 * formOfDay(log, [], settings, null) // { day: 46154, factor: 0.97, sd: 0.02, throws: 8, discs: 8 }
 */
export function formOfDay(
  log: ThrowLog,
  bag: readonly BagDisc[],
  settings: Settings,
  day: number | null,
): DayForm {
  const asked = day ?? newestDay(log.throws);
  if (asked === null) throw unavailable(messages.carry.noDay());
  const discs = dayOfDiscs(log, bag, settings, asked);
  const throws = countThrows(discs);
  if (throws < FORM_LEAST_THROWS || discs.length < FORM_LEAST_DISCS) {
    if (!log.throws.some((thrown) => onDay(thrown, asked)))
      throw unavailable(messages.carry.noThrowsThatDay());
    throw unavailable(
      messages.carry.formTooFew(throws, discs.length, FORM_LEAST_THROWS, FORM_LEAST_DISCS),
    );
  }
  const { shift, sd } = dayShift(discs, daySpread(log, bag, settings, asked));
  const factor = Math.exp(shift);
  return { day: asked, factor, sd: factor * sd, throws, discs: discs.length };
}

const onDay = ({ day }: Throw, asked: number): boolean =>
  day !== null && Math.floor(day) === Math.floor(asked);

const newestDay = (throws: readonly Throw[]): number | null =>
  throws.reduce<number | null>(
    (newest, { day }) => (day !== null && (newest === null || day > newest) ? day : newest),
    null,
  );

const countThrows = (discs: readonly DayOfDisc[]): number =>
  discs.reduce((sum, { residuals }) => sum + residuals.length, 0);

/** The throws of a day by disc, of those discs that the card without that day has. */
function dayOfDiscs(
  log: ThrowLog,
  bag: readonly BagDisc[],
  settings: Settings,
  day: number,
): DayOfDisc[] {
  const others = log.throws.filter((thrown) => !onDay(thrown, day));
  const card = makeCard({ throws: others, leftOut: [] }, bag, settings);
  const smoothCarryM = levelling(settings);
  const rows = new Map(card.rows.map((row) => [discKey(row.disc), row]));
  const found = new Map<string, number[]>();
  for (const thrown of log.throws) {
    if (!onDay(thrown, day)) continue;
    const key = discKey(thrown.disc);
    const row = rows.get(key);
    const carryM = row && levelled(thrown, smoothCarryM, row.type);
    if (!row || !carryM) continue;
    const residuals = found.get(key) ?? [];
    residuals.push(Math.log(carryM) - row.mu);
    found.set(key, residuals);
  }
  return [...found].map(([key, residuals]) => {
    const { scale, evidence } = rows.get(key)!;
    return { residuals, spread: scale, evidence };
  });
}

/** The smooth carry of a throw; null where the flight has no answer, as on the card. */
function levelled(thrown: Throw, smoothCarryM: Levelling, type: BagDisc["type"]): number | null {
  try {
    return smoothCarryM(thrown, type);
  } catch (cause) {
    if (cause instanceof DomainError) return null;
    throw cause;
  }
}

/**
 * How much the player's days differ: over earlier days of enough throws, the mean square of their shifts
 * less what the throws themselves make uncertain, within bounds; the usual figure below three such days.
 */
function daySpread(
  log: ThrowLog,
  bag: readonly BagDisc[],
  settings: Settings,
  before: number,
): number {
  const counts = new Map<number, number>();
  for (const { day } of log.throws) {
    if (day === null || Math.floor(day) >= Math.floor(before)) continue;
    counts.set(Math.floor(day), (counts.get(Math.floor(day)) ?? 0) + 1);
  }
  const squares = [...counts]
    .filter(([, count]) => count >= FORM_LEAST_THROWS)
    .map(([day]) => day)
    .sort((one, other) => other - one)
    .slice(0, MOST_EARLIER_DAYS)
    .map((day) => dayOfDiscs(log, bag, settings, day))
    .filter((discs) => countThrows(discs) >= FORM_LEAST_THROWS)
    .map((discs) => dayShift(discs, Infinity))
    .map(({ shift, sd }) => shift ** 2 - sd ** 2);
  if (squares.length < LEAST_DAYS_FOR_SPREAD) return DAY_SPREAD;
  const variance = squares.reduce((sum, square) => sum + square, 0) / squares.length;
  return Math.min(MOST_DAY_SPREAD, Math.max(LEAST_DAY_SPREAD, Math.sqrt(Math.max(0, variance))));
}
