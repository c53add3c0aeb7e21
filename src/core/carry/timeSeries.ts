/** Values with the day of each, oldest first; throws of one day stay in the order of the log. */
export interface TimeSeries {
  readonly days: Float64Array;
  readonly values: Float64Array;
}

/**
 * The `most` latest of some dated values, oldest first. Of those on the earliest day that still fits,
 * the last in order are kept. Linear for values in order of date, else n log n.
 */
export function latest(
  days: ArrayLike<number>,
  values: ArrayLike<number>,
  most: number,
): TimeSeries {
  const sortedDays = Float64Array.from(days).sort();
  const cut = sortedDays[sortedDays.length - most] ?? -Infinity;
  let spareOnCut = 0;
  for (const day of sortedDays.subarray(Math.max(0, sortedDays.length - most))) {
    if (day === cut) spareOnCut++;
  }
  const kept: number[] = [];
  for (let index = days.length - 1; index >= 0; index--) {
    if (days[index]! > cut || (days[index] === cut && spareOnCut-- > 0)) kept.push(index);
  }
  kept.reverse().sort((one, other) => days[one]! - days[other]!);
  return {
    days: Float64Array.from(kept, (index) => days[index]!),
    values: Float64Array.from(kept, (index) => values[index]!),
  };
}

/** The stretches [from, to) of equal days. */
export function sameDayStretches(days: Float64Array): [from: number, to: number][] {
  const stretches: [number, number][] = [];
  let from = 0;
  for (let to = 1; to <= days.length; to++) {
    if (to < days.length && days[to] === days[from]) continue;
    stretches.push([from, to]);
    from = to;
  }
  return stretches;
}
