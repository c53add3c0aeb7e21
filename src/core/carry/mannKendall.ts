/** Mann–Kendall: whether values tend to rise or to fall with time. */
import { inversions } from "./inversions";
import { normalTwoTails } from "./student";
import { ties, type TimeSeries } from "./timeSeries";

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
