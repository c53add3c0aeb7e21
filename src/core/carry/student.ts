/** Student's t distribution, by the one library that core takes it from. */
import stdlibCdf from "@stdlib/stats-base-dists-t-cdf";
import stdlibQuantile from "@stdlib/stats-base-dists-t-quantile";

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
