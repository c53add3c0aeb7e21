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
