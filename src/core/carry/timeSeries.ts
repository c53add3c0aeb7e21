/** Values with the day of each, oldest first; throws of one day stay in the order of the log. */
export interface TimeSeries {
  readonly days: Float64Array;
  readonly values: Float64Array;
}

/**
 * The `most` latest of some dated values, oldest first. Of those on the earliest day that still fits,
 * the last in order are kept. Linear for values in order of date, else n log n.
 */
export function latest(days: Float64Array, values: Float64Array, most: number): TimeSeries {
  if (isSorted(days)) {
    const from = Math.max(0, days.length - most);
    return { days: days.slice(from), values: values.slice(from) };
  }
  const cut = days.slice().sort()[Math.max(0, days.length - most)]!;
  const order: number[] = [];
  days.forEach((day, index) => day >= cut && order.push(index));
  const kept = order.sort((one, other) => days[one]! - days[other]!).slice(-most);
  return {
    days: Float64Array.from(kept, (index) => days[index]!),
    values: Float64Array.from(kept, (index) => values[index]!),
  };
}

function isSorted(days: Float64Array): boolean {
  for (let index = 1; index < days.length; index++) {
    if (days[index]! < days[index - 1]!) return false;
  }
  return true;
}

/** The stretches [from, to) of two or more equal values in a sorted list. */
export function ties(sorted: Float64Array): [from: number, to: number][] {
  const stretches: [number, number][] = [];
  let from = 0;
  for (let to = 1; to <= sorted.length; to++) {
    if (to < sorted.length && sorted[to] === sorted[from]) continue;
    if (to - from > 1) stretches.push([from, to]);
    from = to;
  }
  return stretches;
}
