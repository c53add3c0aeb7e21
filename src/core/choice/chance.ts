/** The chance to finish in the circle. */
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { messages } from "../messages";
import type { CardRow, Settings, Shot } from "../types";
import { courseForm, powerSpread, type ThrowForm } from "./courseForm";
import { powersOf } from "./power";
import { enoughPoints, shareWithin, tDensity } from "./quadrature";
import { doubtOf, type Target, targetsOf } from "./target";

// The chance at one power.

/**
 * The chance that a disc at some power, a share of smooth, finishes within `circleM` of a target: the
 * integral over the diameter of the density of the miss along the line, times the share of sideways
 * angles that stay within the circle there. Absolute error below 1e-6 for circles no wider than the
 * distance. A throw of level carry L, ln L being t-distributed, misses by (L − D*)·D/D*; the bias is
 * aimed off.
 *
 * @example
 * chanceOf(courseForm(row, settings), plainTarget(90), 10)(0.95) // from 0 to 1
 */
export function chanceOf(
  form: ThrowForm,
  target: Target,
  circleM: number,
): (power: number) => number {
  const { freedom, side } = form;
  const { distanceM, playsLikeM } = target;
  const stretch = distanceM / playsLikeM;
  const doubt = doubtOf(target);
  const alongScaleM = powerSpread(form, 1, doubt).scale * distanceM;
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
    const { centre, scale } = powerSpread(form, power, doubt);
    let chance = 0;
    for (let at = 0; at < share.length; at++) {
      if (share[at]! > 0) chance += share[at]! * density((lnCarry[at]! - centre) / scale);
    }
    return Math.min(1, chance / scale);
  };
}

// One disc, at whatever power serves best.

/**
 * The greatest chance that a disc finishes in the circle, over its powers; from 0 to 1.
 * Throws `unavailable` where the flight has no answer.
 */
export function bestChance(shot: Shot, row: CardRow, settings: Settings): number {
  const target = targetsOf(shot, conditionsOf(settings))(row);
  if (!target) throw unavailable(messages.flight.outOfReach());
  const chance = chanceOf(courseForm(row, settings), target, settings.circleM);
  return Math.max(...powersOf(row, settings).map(chance));
}
