/** Where to look at a t distribution for a mean over all that a throw may do. */
import gammaln from "@stdlib/math-base-special-gammaln";
import { tCdf, tQuantile } from "../carry/student";
import { WILD_SHARE } from "../constants";
import { remember } from "../memory";

// Where to look at a landing spread in order to add up what falls in a circle.

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

// Gauss–Legendre rules.

export interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const rulesKept = remember<Rule>(16);

/**
 * The rule of `count` points from `from` to `to`: Σ weights · f(nodes) approaches the integral of f,
 * exactly so for polynomials up to degree 2·count − 1.
 *
 * @example
 * gaussLegendre(2, -1, 1).nodes // [−0.577…, 0.577…]
 */
export function gaussLegendre(count: number, from: number, to: number): Rule {
  const { nodes, weights } = rulesKept(`${count}`, () => plainRule(count));
  const half = (to - from) / 2;
  return {
    nodes: nodes.map((node) => from + half * (1 + node)),
    weights: weights.map((weight) => half * weight),
  };
}

/** From −1 to 1: roots by Newton's method from the usual cosine start (NIST DLMF 3.5(v) and 18.16). */
function plainRule(count: number): Rule {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let index = 0; index < count; index++) {
    let root = -Math.cos((Math.PI * (index + 0.75)) / (count + 0.5));
    let { value, slope } = legendre(count, root);
    for (let round = 0; round < 50 && Math.abs(value) > 1e-15; round++) {
      root -= value / slope;
      ({ value, slope } = legendre(count, root));
    }
    nodes[index] = root;
    weights[index] = 2 / ((1 - root * root) * slope * slope);
  }
  return { nodes, weights };
}

/** The Legendre polynomial of a degree and its slope inside (−1, 1), by the three-term recurrence. */
function legendre(degree: number, x: number): { value: number; slope: number } {
  let before = 0;
  let value = 1;
  for (let n = 1; n <= degree; n++) {
    [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n];
  }
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) };
}

// The density of Student's t.

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

// Two-sided shares of Student's t, often and fast.

const STEP = 0.05;
const LAST = 8;

const shareWithinMemory = remember<(reach: number) => number>(200);

/**
 * The share of the t distribution within ± `reach` scales, as a function of `reach` from 0 on. Cubic
 * between exact values and slopes 0.05 apart, each worked out when first met; exact beyond 8. Absolute
 * error below 1e-7.
 *
 * @example
 * shareWithin(4)(2.7764451) // 0.95
 */
export const shareWithin = (freedom: number): ((reach: number) => number) =>
  shareWithinMemory(`${freedom}`, () => shareTable(freedom));

function shareTable(freedom: number): (reach: number) => number {
  const exact = (reach: number): number => 2 * tCdf(reach, freedom) - 1;
  const density = tDensity(freedom);
  const size = LAST / STEP + 1;
  const values = new Float64Array(size).fill(NaN);
  const slopes = new Float64Array(size);
  const fill = (knot: number): void => {
    if (!Number.isNaN(values[knot]!)) return;
    values[knot] = exact(knot * STEP);
    slopes[knot] = 2 * density(knot * STEP) * STEP;
  };
  return (reach) => {
    const at = reach / STEP;
    const knot = Math.floor(at);
    if (!(knot + 1 < size)) return exact(reach);
    fill(knot);
    fill(knot + 1);
    const t = at - knot;
    const rise = values[knot + 1]! - values[knot]!;
    const start = slopes[knot]!;
    const end = slopes[knot + 1]!;
    return (
      values[knot]! + t * (start + t * (3 * rise - 2 * start - end + t * (start + end - 2 * rise)))
    );
  };
}

/** Points in scales from the middle; the weights sum to the share of throws that they stand for. */
export interface SpreadRule {
  readonly scales: Float64Array;
  readonly weights: Float64Array;
}

const reachMemory = remember<number>(200);

/**
 * How far from the middle, in scales, a throw is taken to go: the wildest thousandth on each side is
 * left out, since a log-t carry followed to its end has no finite mean.
 */
export const wildReach = (freedom: number): number =>
  reachMemory(`${freedom}`, () => tQuantile(1 - WILD_SHARE, freedom));

/**
 * A rule of `count` points for the part of the t distribution between two scales, cut to the wild
 * reach; no points where nothing is left. Gauss–Legendre in y with x = √freedom · sinh y, which turns
 * the density into a power of cosh y and so needs no more points for a heavy tail.
 */
export function spreadRule(freedom: number, count: number, from: number, to: number): SpreadRule {
  const reach = wildReach(freedom);
  const start = Math.max(from, -reach);
  const end = Math.min(to, reach);
  if (!(start < end)) return { scales: new Float64Array(0), weights: new Float64Array(0) };
  const root = Math.sqrt(freedom);
  const { nodes, weights } = gaussLegendre(count, Math.asinh(start / root), Math.asinh(end / root));
  const density = tDensity(freedom);
  const whole = 1 - 2 * WILD_SHARE;
  const scales = nodes.map((y) => root * Math.sinh(y));
  return {
    scales,
    weights: weights.map(
      (weight, index) =>
        (weight * root * Math.cosh(nodes[index]!) * density(scales[index]!)) / whole,
    ),
  };
}
