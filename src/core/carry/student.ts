/** Student's t distribution, by the one library that core takes it from. */
import stdlibCdf from "@stdlib/stats-base-dists-t-cdf";
import stdlibQuantile from "@stdlib/stats-base-dists-t-quantile";
import { UPPER_TENTH } from "../constants";
import type { CardRow } from "../types";

/** So many degrees of freedom that t is normal to 11 digits. */
const NORMAL_FREEDOM = 1e12;

/**
 * The value below which a share `p` of the t distribution lies. `p` from 0 to 1, `freedom` above 0
 * and not necessarily whole. Accurate to 5e-12 relative (see the handbook table in test/golden);
 * NaN outside those ranges, ∓Infinity at 0 and 1.
 *
 * @example
 * tQuantile(0.975, 5) // 2.5705818…
 */
export const tQuantile = (p: number, freedom: number): number => stdlibQuantile(p, freedom);

/**
 * The share of the t distribution below `x`; `freedom` above 0. Accurate to 5e-12; NaN for NaN.
 *
 * @example
 * tCdf(0, 7) // 0.5
 */
export const tCdf = (x: number, freedom: number): number => stdlibCdf(x, freedom);

/** The share of the normal distribution farther than `z` from its middle, on both sides together. */
export const normalTwoTails = (z: number): number => 2 * tCdf(-Math.abs(z), NORMAL_FREEDOM);

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

// Where the next smooth throw of a disc may stop.

export interface NextCarry {
  readonly lowM: number;
  readonly carryM: number;
  readonly highM: number;
}

/**
 * Smooth carry of a row of the card, m, with the bounds that eight of ten next throws fall within:
 * e^(mu ∓ t·scale·√(1 + 1/n)), t being the 90 % point of Student's t with the freedom of the row.
 *
 * @example
 * nextCarry(rowOf(card, "Copper mid")) // { lowM: 84.1, carryM: 91.4, highM: 99.3 }
 */
export function nextCarry({ mu, scale, freedom, evidence }: CardRow): NextCarry {
  const carryM = Math.exp(mu);
  const reach = tQuantile(UPPER_TENTH, freedom) * scale * Math.sqrt(1 + 1 / evidence);
  return { lowM: carryM * Math.exp(-reach), carryM, highM: carryM * Math.exp(reach) };
}
