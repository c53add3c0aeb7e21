/** Where to look at a landing spread in order to add up what falls in a circle. */
import { remember } from "../memory";

/** Points along the line through the middle of a circle, with the circle's half width at each. */
export interface CirclePoints {
  readonly alongM: Float64Array;
  readonly halfWidthM: Float64Array;
  /** Σ weightM · f(alongM) approaches the integral of f over the diameter. */
  readonly weightM: Float64Array;
}

/**
 * `count` points for a circle of `radiusM`. With e = R sin θ the integrand of a chance inside a circle,
 * density(e) · across(√(R² − e²)), becomes smooth and periodic in θ, so that equally spaced points
 * (Gauss–Chebyshev rule of the second kind, Abramowitz & Stegun 25.4.40) gain digits in proportion to
 * their number, which a rule that meets the square root at the rim does not.
 *
 * @example
 * circlePoints(1, 3).alongM // [−0.866…, 0, 0.866…]
 */
export function circlePoints(radiusM: number, count: number): CirclePoints {
  const step = Math.PI / count;
  const angles = Float64Array.from(
    { length: count },
    (_, index) => (index + 0.5) * step - Math.PI / 2,
  );
  return {
    alongM: angles.map((theta) => radiusM * Math.sin(theta)),
    halfWidthM: angles.map((theta) => radiusM * Math.cos(theta)),
    weightM: angles.map((theta) => radiusM * Math.cos(theta) * step),
  };
}

/** A spread in one direction: its scale, m, and its t freedom. */
export interface SpreadM {
  readonly scaleM: number;
  readonly freedom: number;
}

const memory = remember<CirclePoints>(64);

/** More points than any spread of a throw asks for. */
const MOST_POINTS = 2048;

/**
 * Points enough for these spreads, along and across, to an absolute error below 1e-7 in the chance.
 * The rule gains e^(−2wN), w being how far the integrand stays smooth beside the real line: a t density
 * ends it at ± i·scale·√freedom. A nearly normal density has no such end, but N must then resolve its
 * width. Both figures were set against runs with many more points.
 */
export function enoughPoints(radiusM: number, spreads: readonly SpreadM[]): CirclePoints {
  const needed = spreads.map(({ scaleM, freedom }) =>
    Math.max(14 / Math.asinh((scaleM * Math.sqrt(freedom)) / radiusM), (4.5 * radiusM) / scaleM),
  );
  const count = Math.min(MOST_POINTS, 8 * Math.ceil(1 + Math.max(...needed) / 8));
  return memory(`${radiusM} ${count}`, () => circlePoints(radiusM, count));
}
