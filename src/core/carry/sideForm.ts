/** What the throws of one disc tell of its sideways miss. */
import { PRIOR_FREEDOM } from "../constants";
import type { SideForm } from "../types";
import { moderate } from "./moderation";

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
