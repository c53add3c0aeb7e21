/** Which year a date without one means. */
import { serialDay } from "../log/serialDay";

/**
 * The year in which a month and day lie nearest to a serial day, or, where `noLater` is set, latest
 * before it or on it. null where there is no such day in the years around.
 */
export function yearNear(
  month: number,
  day: number,
  serial: number,
  noLater: boolean,
): number | null {
  const around = Math.round(1900 + serial / 365.2425);
  let best: number | null = null;
  let leastAway = Infinity;
  for (let year = around - 4; year <= around + 4; year++) {
    const candidate = serialDay(year, month, day);
    if (candidate === null || (noLater && candidate > serial)) continue;
    const away = Math.abs(candidate - serial);
    if (away < leastAway) [best, leastAway] = [year, away];
  }
  return best;
}
