import { weightedMedian } from "./weightedMedian";

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
