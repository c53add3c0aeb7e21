import { UPPER_TENTH } from "../constants";
import { tQuantile } from "./student";

/** A card of ours has 2 degrees of freedom or more; beyond the upper bound more make no difference. */
const LEAST = 1;
const MOST = 1e6;
/** As near as the quantile itself is computed. */
const CLOSE = 4e-16;

/**
 * The degrees of freedom whose 90 % point of Student's t is `t`, kept within 1 to a million; NaN for
 * NaN. The point is nearly straight in 1/freedom, so false position (the Illinois variant, Dowell &
 * Jarratt 1971, BIT 11:168) finds it in about ten steps; relative error below 1e-10 up to 1,000.
 *
 * @example
 * freedomOf(1.5332062737) // 4
 */
export function freedomOf(t: number): number {
  if (Number.isNaN(t)) return NaN;
  const excess = (inverse: number): number => tQuantile(UPPER_TENTH, 1 / inverse) - t;
  let far = 1 / MOST;
  let near = 1 / LEAST;
  let farExcess = excess(far);
  let nearExcess = excess(near);
  if (farExcess >= 0) return MOST;
  if (nearExcess <= 0) return LEAST;
  while (Math.abs(nearExcess) > CLOSE * t) {
    const next = near - (nearExcess * (near - far)) / (nearExcess - farExcess);
    if (next === near || next === far || Number.isNaN(next)) break;
    const nextExcess = excess(next);
    if (nextExcess > 0 === nearExcess > 0) farExcess /= 2;
    else [far, farExcess] = [near, nearExcess];
    [near, nearExcess] = [next, nextExcess];
  }
  return 1 / near;
}
