/** Mann–Kendall: whether values tend to rise or to fall with time. */
import { normalTwoTails } from "./student";

/**
 * The value with half of the weight on either side; where a value splits the weight exactly, the
 * middle between it and its neighbour. `weights` not negative, one a value, in any order. NaN for no
 * values. Quickselect with a three-way partition: linear in the count on average.
 *
 * @example
 * weightedMedian(Float64Array.of(1, 2, 9), Float64Array.of(1, 1, 1)) // 2
 */
export function weightedMedian(values: Float64Array, weights: Float64Array): number {
  const sorted = values.slice();
  const weight = weights.slice();
  const half = weights.reduce((sum, w) => sum + w, 0) / 2;
  let from = 0;
  let to = sorted.length - 1;
  let below = 0;
  while (from <= to) {
    const { less, more, lessWeight, equalWeight } = partition(sorted, weight, from, to);
    const above = below + lessWeight + equalWeight;
    if (below + lessWeight > half) to = less - 1;
    else if (above < half) {
      below = above;
      from = more + 1;
    } else {
      const pivot = sorted[less]!;
      if (below + lessWeight === half && less > 0) return (largest(sorted, less) + pivot) / 2;
      if (above === half && more < sorted.length - 1)
        return (pivot + smallest(sorted, more + 1)) / 2;
      return pivot;
    }
  }
  return NaN;
}

interface Parted {
  /** First and last index of the values equal to the pivot. */
  readonly less: number;
  readonly more: number;
  readonly lessWeight: number;
  readonly equalWeight: number;
}

/** Puts from … to in the order smaller, equal, larger than a pivot out of its middle. */
function partition(values: Float64Array, weights: Float64Array, from: number, to: number): Parted {
  const pivot = values[(from + to) >>> 1]!;
  let less = from;
  let at = from;
  let more = to;
  let lessWeight = 0;
  let equalWeight = 0;
  while (at <= more) {
    const value = values[at]!;
    if (value < pivot) {
      lessWeight += weights[at]!;
      swap(values, weights, less++, at++);
    } else if (value > pivot) swap(values, weights, at, more--);
    else equalWeight += weights[at++]!;
  }
  return { less, more, lessWeight, equalWeight };
}

function swap(values: Float64Array, weights: Float64Array, one: number, other: number): void {
  const value = values[one]!;
  const weight = weights[one]!;
  values[one] = values[other]!;
  weights[one] = weights[other]!;
  values[other] = value;
  weights[other] = weight;
}

const largest = (values: Float64Array, to: number): number =>
  values.subarray(0, to).reduce((most, value) => Math.max(most, value), -Infinity);
const smallest = (values: Float64Array, from: number): number =>
  values.subarray(from).reduce((least, value) => Math.min(least, value), Infinity);

/** The middle value, or the middle between the two middle ones; NaN for none. */
export const median = (values: Float64Array): number =>
  weightedMedian(values, new Float64Array(values.length).fill(1));

/** A pull below this share of the greatest possible one is rounding. */
const ROUNDING = 1e-13;

/**
 * How much one value counts in Huber's estimate: fully up to `reach` from the location, then ever
 * less. Same unit for both.
 */
export const huberWeight = (residual: number, reach: number): number => {
  const size = Math.abs(residual);
  return size <= reach ? 1 : reach / size;
};

/**
 * Huber's location: the centre of `values` in which a value farther than `reach` (tuning × scale)
 * pulls no harder than one at that distance. One weight, not negative, a value; in and out in the unit of
 * the values. The root of the monotone, piecewise linear score (Huber 1964, Ann. Math. Stat. 35:73),
 * by Newton steps from the weighted median, held inside a shrinking bracket, to 1e-12
 * of the reach. Where every
 * point of a stretch is a root, as between two throws far apart, it stays at the median. NaN for no
 * values.
 *
 * @example
 * huberLocation(Float64Array.of(1, 2, 30), Float64Array.of(1, 1, 1), 1.5) // 2.25
 */
export function huberLocation(values: Float64Array, weights: Float64Array, reach: number): number {
  let location = weightedMedian(values, weights);
  let low = Infinity;
  let high = -Infinity;
  let total = 0;
  for (let index = 0; index < values.length; index++) {
    low = Math.min(low, values[index]!);
    high = Math.max(high, values[index]!);
    total += weights[index]!;
  }
  for (;;) {
    let score = 0;
    let slope = 0;
    for (let index = 0; index < values.length; index++) {
      const residual = values[index]! - location;
      const weight = weights[index]!;
      if (residual > reach) score += weight * reach;
      else if (residual < -reach) score -= weight * reach;
      else {
        score += weight * residual;
        slope += weight;
      }
    }
    if (!(Math.abs(score) > ROUNDING * total * reach)) return location;
    if (score > 0) low = location;
    else high = location;
    const newton = location + score / slope;
    const next = newton > low && newton < high ? newton : (low + high) / 2;
    if (next === location) return location;
    location = next;
  }
}

/**
 * How many pairs of a sequence stand in falling order (an earlier value above a later one); equal
 * values do not count. Merge sort on a copy: n log n.
 *
 * @example
 * inversions(Float64Array.of(3, 1, 2)) // 2
 */
export function inversions(values: Float64Array): number {
  let from = values.slice();
  let into = new Float64Array(values.length);
  let count = 0;
  for (let width = 1; width < values.length; width *= 2) {
    for (let start = 0; start < values.length; start += 2 * width) {
      count += mergeRuns(from, into, start, width);
    }
    [from, into] = [into, from];
  }
  return count;
}

/** Merges two neighbouring sorted runs; the count of pairs that were in falling order across them. */
function mergeRuns(from: Float64Array, into: Float64Array, start: number, width: number): number {
  const middle = Math.min(start + width, from.length);
  const end = Math.min(start + 2 * width, from.length);
  let left = start;
  let right = middle;
  let count = 0;
  for (let at = start; at < end; at++) {
    if (right >= end || (left < middle && from[left]! <= from[right]!)) into[at] = from[left++]!;
    else {
      into[at] = from[right++]!;
      count += middle - left;
    }
  }
  return count;
}

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

/** Up to so many values without ties, p is counted out instead of approximated. */
const MOST_EXACT = 10;

export interface MannKendall {
  /** Rising pairs less falling ones. */
  readonly s: number;
  /** Of s, were there no trend. */
  readonly variance: number;
  /** Two-sided. */
  readonly p: number;
}

/**
 * Mann–Kendall test (Mann 1945, Econometrica 13:245; Kendall 1970, Rank Correlation Methods, ties in
 * days and in values). `series` oldest first; pairs of one day do not count. p is exact for 10 values
 * or fewer without ties, else normal with continuity correction. Fewer than two days or two values
 * tell nothing: s 0, p 1.
 *
 * @example
 * mannKendall({ days: Float64Array.of(1, 2, 3), values: Float64Array.of(4, 5, 6) }).p // 1/3
 */
export function mannKendall({ days, values }: TimeSeries): MannKendall {
  const s = rising({ days, values }, 0);
  const tiedDays = ties(days).map(([from, to]) => to - from);
  const tiedValues = ties(values.slice().sort()).map(([from, to]) => to - from);
  const variance = varianceOfS(values.length, tiedDays, tiedValues);
  const untied = tiedDays.length === 0 && tiedValues.length === 0;
  if (values.length <= MOST_EXACT && untied) return { s, variance, p: exactP(values.length, s) };
  if (s === 0 || !(variance > 0)) return { s, variance, p: 1 };
  return { s, variance, p: normalTwoTails((Math.abs(s) - 1) / Math.sqrt(variance)) };
}

/**
 * Pairs of different days in which the value rises by more than `slope` a day, less those in which it
 * rises by less. Above 0, more than half of all slopes between two days, and so their median, exceed `slope`.
 */
export function rising({ days, values }: TimeSeries, slope: number): number {
  const sameDay = ties(days);
  const tilted = new Float64Array(values.length);
  const mirrored = new Float64Array(values.length);
  for (let index = 0; index < values.length; index++) {
    tilted[index] = values[index]! - slope * days[index]!;
    mirrored[index] = -tilted[index]!;
  }
  return falling(mirrored, sameDay) - falling(tilted, sameDay);
}

/** Pairs of different days in which the value falls: sorted within each day, a day has none of its own. */
function falling(values: Float64Array, sameDay: readonly [number, number][]): number {
  for (const [from, to] of sameDay) values.subarray(from, to).sort();
  return inversions(values);
}

function varianceOfS(
  n: number,
  tiedDays: readonly number[],
  tiedValues: readonly number[],
): number {
  const sum = (ties: readonly number[], term: (t: number) => number): number =>
    ties.reduce((total, t) => total + term(t), 0);
  const overall = (t: number): number => t * (t - 1) * (2 * t + 5);
  const pairs = (t: number): number => t * (t - 1);
  const triples = (t: number): number => t * (t - 1) * (t - 2);
  const plain = (overall(n) - sum(tiedDays, overall) - sum(tiedValues, overall)) / 18;
  const both = n < 2 ? 0 : (sum(tiedDays, pairs) * sum(tiedValues, pairs)) / (2 * pairs(n));
  const cubic = n < 3 ? 0 : (sum(tiedDays, triples) * sum(tiedValues, triples)) / (9 * triples(n));
  return plain + both + cubic;
}

/** Two-sided p of s by counting the orders of n values by their falling pairs (Mahonian numbers). */
function exactP(n: number, s: number): number {
  let orders = [1];
  for (let size = 2; size <= n; size++) {
    const next = new Array<number>(orders.length + size - 1).fill(0);
    orders.forEach((count, falls) => {
      for (let more = 0; more < size; more++) next[falls + more]! += count;
    });
    orders = next;
  }
  const pairs = (n * (n - 1)) / 2;
  const atLeast = (pairs - Math.abs(s)) / 2;
  const all = orders.reduce((sum, count) => sum + count, 0);
  const tail = orders.slice(0, atLeast + 1).reduce((sum, count) => sum + count, 0);
  return Math.min(1, (2 * tail) / all);
}

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

/** A list of numbers that grows, without an object a number: a full sheet has a million throws. */
export class NumberList {
  private room = new Float64Array(8);
  private count = 0;

  get length(): number {
    return this.count;
  }

  push(value: number): void {
    if (this.count === this.room.length) {
      const larger = new Float64Array(2 * this.room.length);
      larger.set(this.room);
      this.room = larger;
    }
    this.room[this.count++] = value;
  }

  /** The numbers so far; a view, to be read before the next `push`. */
  view(): Float64Array {
    return this.room.subarray(0, this.count);
  }
}
