/** What the throws of one disc tell of its smooth carry. */
import { HUBER_TUNING } from "../constants";
import { huberLocation, huberWeight } from "./huber";
import type { Variance } from "./moderation";

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
