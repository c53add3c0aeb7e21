/** The chance to finish in the circle. */
import type { CardRow } from "../types";
import { enoughPoints } from "./circlePoints";
import { powerSpread } from "./powerSpread";
import { shareWithin } from "./shareWithin";
import { tDensity } from "./tDensity";
import type { Target } from "./target";

/** What of a disc's form bears on where its throws end. */
export type ThrowForm = Pick<CardRow, "mu" | "scale" | "freedom" | "evidence" | "side">;

/**
 * The chance that a disc at some power, a share of smooth, finishes within `circleM` of a target: the
 * integral over the diameter of the density of the miss along the line, times the share of sideways
 * angles that stay within the circle there. Absolute error below 1e-6 for circles no wider than the
 * distance. A throw of level carry L, ln L being t-distributed, misses by (L − D*)·D/D*; the bias is
 * aimed off.
 *
 * @example
 * chanceOf(row, { distanceM: 90, playsLikeM: 95 }, 10)(0.95) // from 0 to 1
 */
export function chanceOf(
  row: ThrowForm,
  { distanceM, playsLikeM }: Target,
  circleM: number,
): (power: number) => number {
  const { freedom, side } = row;
  const stretch = distanceM / playsLikeM;
  const alongScaleM = powerSpread(row, 1).scale * distanceM;
  const { alongM, halfWidthM, weightM } = enoughPoints(circleM, [
    { scaleM: alongScaleM, freedom },
    { scaleM: side.scaleRad * distanceM, freedom: side.freedom },
  ]);
  const density = tDensity(freedom);
  const across = shareWithin(side.freedom);
  const lnCarry = alongM.map((miss) => Math.log(playsLikeM + miss / stretch));
  // Density of the miss from the density of ln carry: divided by the carry and by the stretch.
  const share = weightM.map((weight, at) => {
    const carryM = playsLikeM + alongM[at]! / stretch;
    const within = across(Math.atan(halfWidthM[at]! / distanceM) / side.scaleRad);
    return carryM > 0 ? (weight * within) / (carryM * stretch) : 0;
  });
  return (power) => {
    const { centre, scale } = powerSpread(row, power);
    let chance = 0;
    for (let at = 0; at < share.length; at++) {
      if (share[at]! > 0) chance += share[at]! * density((lnCarry[at]! - centre) / scale);
    }
    return Math.min(1, chance / scale);
  };
}
