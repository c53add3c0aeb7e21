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
  angles: readonly number[],
  weights: readonly number[],
  usualSpreadRad: number,
): SideForm {
  const sum = total(weights);
  const throws = angles.length === 0 ? 0 : sum ** 2 / total(weights.map((w) => w * w));
  const mean = throws === 0 ? 0 : total(angles.map((angle, i) => angle * weights[i]!)) / sum;
  const biasRad = (mean * throws) / (throws + 1);
  if (angles.length < 2 || !(throws > 1))
    return { biasRad, scaleRad: usualSpreadRad, freedom: PRIOR_FREEDOM, throws };
  const squares = total(angles.map((angle, i) => weights[i]! * (angle - mean) ** 2));
  const own = { variance: squares / (sum * (1 - 1 / throws)), freedom: throws - 1 };
  const { variance, freedom } = moderate(
    { variance: usualSpreadRad ** 2, freedom: PRIOR_FREEDOM },
    own,
  );
  return { biasRad, scaleRad: Math.sqrt(variance * (1 + 1 / throws)), freedom, throws };
}

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
