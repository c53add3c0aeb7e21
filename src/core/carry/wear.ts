/** Whether a disc is changing. */
import {
  MONTH_DAYS,
  TREND_LEAST_DAYS,
  TREND_LEAST_THROWS,
  TREND_P,
  TREND_SHARE,
} from "../constants";
import { DomainError } from "../errors";
import { discKey } from "../log/names";
import { messages } from "../messages";
import type { BagDisc, Settings, ThrowLog, Verdict } from "../types";
import { DiscHistory } from "./card";
import { levelling, noSuchDisc } from "./levelThrows";
import { mannKendall, median, rising, theilSen, type TimeSeries } from "./statistics";

export interface Trend {
  readonly verdict: Verdict;
  /** Change of smooth carry; null where no two dated throws are of different days. */
  readonly changePerMonthM: number | null;
  /** Two-sided p of the Mann–Kendall test; null where the change is. */
  readonly p: number | null;
  /** Dated throws that it rests on. */
  readonly throws: number;
}

/**
 * The throws of one disc, levelled as for the card: by its type in the bag, and without those that the
 * flight cannot level. Throws an `unavailable` error, with the reason, where none is left.
 */
export function historyOf(
  disc: string,
  log: ThrowLog,
  settings: Settings,
  bag: readonly BagDisc[] | null,
): DiscHistory {
  const key = discKey(disc);
  const listed = bag?.find((known) => discKey(known.disc) === key) ?? null;
  const smoothCarryM = levelling(settings);
  const history = new DiscHistory(listed?.disc ?? disc, listed);
  const leftOut = [...log.leftOut];
  for (const thrown of log.throws) {
    if (discKey(thrown.disc) !== key) continue;
    try {
      history.add(thrown, smoothCarryM(thrown, listed?.type ?? null));
    } catch (cause) {
      if (!(cause instanceof DomainError)) throw cause;
      const reason = messages.carry.notLevelled(thrown.row, cause.message);
      leftOut.push({ row: thrown.row, disc: thrown.disc, reason });
    }
  }
  if (history.throws === 0) throw noSuchDisc(disc, leftOut, log.throws);
  return history;
}

/**
 * Drift of one disc: Theil–Sen slope of its level, calm, smooth carry on the date, with the p of the
 * Mann–Kendall test, the same that the card's verdict rests on. Throws without a date do not count; of
 * many, the latest 300 do. The bag, where given, tells the type of the disc. Throws an `unavailable`
 * error for a disc without a throw.
 *
 * @example
 * trendOf("Copper mid", log, settings) // { verdict: "steady", changePerMonthM: 0.4, p: 0.31, throws: 12 }
 */
export function trendOf(
  disc: string,
  log: ThrowLog,
  settings: Settings,
  bag: readonly BagDisc[] | null = null,
): Trend {
  const series = historyOf(disc, log, settings, bag).series();
  const slope = theilSen(series);
  const hasSlope = !Number.isNaN(slope);
  return {
    verdict: verdictOf(series),
    changePerMonthM: hasSlope ? slope * MONTH_DAYS : null,
    p: hasSlope ? mannKendall(series).p : null,
    throws: series.days.length,
  };
}

/**
 * The verdict on carries in m by day, oldest first: "changing" from 5 throws over 30 days on, with
 * p < 0.05 and more than 3 % of the median carry over the span; else "steady", or "too few".
 */
export function verdictOf(series: TimeSeries): Verdict {
  const { days, values } = series;
  const spanDays = days.length === 0 ? 0 : days[days.length - 1]! - days[0]!;
  if (days.length < TREND_LEAST_THROWS || spanDays < TREND_LEAST_DAYS) return "too few";
  if (mannKendall(series).p >= TREND_P) return "steady";
  const slope = (TREND_SHARE * median(values)) / spanDays;
  return rising(series, slope) > 0 || rising(series, -slope) < 0 ? "changing" : "steady";
}
