/** Where to look at a t distribution for a mean over all that a throw may do. */
import { tQuantile } from "../carry/student";
import { WILD_SHARE } from "../constants";
import { remember } from "../memory";
import { gaussLegendre } from "./gaussLegendre";
import { tDensity } from "./tDensity";

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
