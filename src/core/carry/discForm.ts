/** What the throws of one disc tell of its sideways miss. */
import { HUBER_TUNING, PRIOR_FREEDOM } from "../constants";
import type { SideForm } from "../types";
import { moderate, type Variance } from "./moderation";
import { huberLocation, huberWeight } from "./statistics";

// What the throws of one disc tell of its smooth carry.

export interface CarryForm {
  /** Centre of ln carry. */
  readonly mu: number;
  /** Effective number of throws. */
  readonly evidence: number;
  /** Variance of ln carry among the throws, with its freedom; both 0 for one throw. */
  readonly own: Variance;
}

/**
 * Weighted Huber centre at the fixed scale `usualSpread`, and the variance about it with the weights
 * that the centre ended with. `lnCarries` and `weights` one a throw, at least one. Effective number
 * n = (ΣW)²/ΣW² (Kish 1965); variance ΣWr²/(ΣW(1 − 1/n)), the weighted form of dividing by n − 1.
 */
export function carryForm(
  lnCarries: Float64Array,
  weights: Float64Array,
  usualSpread: number,
): CarryForm {
  const reach = HUBER_TUNING * usualSpread;
  const mu = huberLocation(lnCarries, weights, reach);
  let sum = 0;
  let sumOfSquares = 0;
  let squaredResiduals = 0;
  for (let index = 0; index < lnCarries.length; index++) {
    const residual = lnCarries[index]! - mu;
    const weight = weights[index]! * huberWeight(residual, reach);
    sum += weight;
    sumOfSquares += weight * weight;
    squaredResiduals += weight * residual * residual;
  }
  const evidence = (sum * sum) / sumOfSquares;
  const freedom = evidence - 1;
  if (lnCarries.length < 2 || !(freedom > 0))
    return { mu, evidence: 1, own: { variance: 0, freedom: 0 } };
  const variance = squaredResiduals / (sum * (1 - 1 / evidence));
  return { mu, evidence, own: { variance, freedom } };
}

/**
 * Bias and spread of sideways angles in rad, right positive. `angles` and `weights` one a throw
 * whose offline was noted, possibly none. The bias is shrunk as if one more throw had gone straight;
 * the spread is moderated by the usual one, and widened by √(1 + 1/n) for the next throw, from two
 * throws on; below that the usual spread stands alone. n is the effective number (ΣW)²/ΣW².
 */
export function sideForm(
  angles: Float64Array,
  weights: Float64Array,
  usualSpreadRad: number,
): SideForm {
  let sum = 0;
  let sumOfSquares = 0;
  let weighted = 0;
  for (let index = 0; index < angles.length; index++) {
    sum += weights[index]!;
    sumOfSquares += weights[index]! ** 2;
    weighted += weights[index]! * angles[index]!;
  }
  const throws = angles.length === 0 ? 0 : sum ** 2 / sumOfSquares;
  const mean = angles.length === 0 ? 0 : weighted / sum;
  const biasRad = (mean * throws) / (throws + 1);
  if (angles.length < 2 || !(throws > 1))
    return { biasRad, scaleRad: usualSpreadRad, freedom: PRIOR_FREEDOM, throws };
  let squaredResiduals = 0;
  for (let index = 0; index < angles.length; index++) {
    squaredResiduals += weights[index]! * (angles[index]! - mean) ** 2;
  }
  const { variance, freedom } = moderate(
    { variance: usualSpreadRad ** 2, freedom: PRIOR_FREEDOM },
    { variance: squaredResiduals / (sum * (1 - 1 / throws)), freedom: throws - 1 },
  );
  return { biasRad, scaleRad: Math.sqrt(variance * (1 + 1 / throws)), freedom, throws };
}
