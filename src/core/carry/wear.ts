/** Whether a disc is changing. */
import {
  MONTH_DAYS,
  TREND_LEAST_DAYS,
  TREND_LEAST_THROWS,
  TREND_P,
  TREND_SHARE,
} from "../constants";
import { conditionsOf } from "../flight/air";
import { discKey } from "../log/names";
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
 * Drift of one disc: Theil–Sen slope of its level, calm, smooth carry on the date, with the p of the
 * Mann–Kendall test. Throws without a date do not count; of many, the latest 300 do. Throws an
 * `unavailable` error for a disc without a throw. The bag, where given, tells the type of the disc, by
 * which wind and slope are taken off.
 *
 * @example
 * trendOf("Copper mid", log, settings) // { verdict: "steady", changePerMonthM: 0.4, p: 0.31, throws: 12 }
 */
export function trendOf(
  disc: string,
  log: ThrowLog,
  settings: Settings,
  bag: readonly BagDisc[] = [],
): Trend {
  const key = discKey(disc);
  const own = log.throws.filter((thrown) => discKey(thrown.disc) === key);
  if (own.length === 0) throw noSuchDisc(disc, log.leftOut);
  const smoothCarryM = levelling(conditionsOf(settings));
  const known = bag.find((listed) => discKey(listed.disc) === key) ?? null;
  const history = new DiscHistory(disc, known);
  for (const thrown of own) history.add(thrown, smoothCarryM(thrown, known?.type ?? null));
  const series = history.series();
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
