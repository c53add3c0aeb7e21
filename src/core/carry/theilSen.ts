import type { TimeSeries } from "./timeSeries";
import { median } from "./weightedMedian";

/**
 * Theil–Sen slope: the median of the slopes between all pairs of different days (Sen 1968, J. Am.
 * Stat. Assoc. 63:1379), in units of the values a day. Looks at every pair, so keep to hundreds of
 * values. NaN where no two days differ.
 *
 * @example
 * theilSen({ days: Float64Array.of(1, 2, 3), values: Float64Array.of(4, 5, 9) }) // 2.5
 */
export function theilSen({ days, values }: TimeSeries): number {
  const slopes = new Float64Array((days.length * (days.length - 1)) / 2);
  let count = 0;
  for (let later = 1; later < days.length; later++) {
    for (let earlier = 0; earlier < later; earlier++) {
      const span = days[later]! - days[earlier]!;
      if (span !== 0) slopes[count++] = (values[later]! - values[earlier]!) / span;
    }
  }
  return median(slopes.subarray(0, count));
}
