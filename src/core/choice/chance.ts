/** The chance to finish in the circle. */
import { SOFTNESS_COST } from "../constants";
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { messages } from "../messages";
import type { CardRow, Settings, Shot } from "../types";
import { powersOf } from "./power";
import { enoughPoints, shareWithin, tDensity } from "./quadrature";
import { type Target, targetsOf } from "./target";

// How surely a disc is thrown at a power.

/** ln(level, calm carry in m) of the next throw at one power ~ t(centre, scale) with the row's freedom. */
export interface PowerSpread {
  readonly centre: number;
  readonly scale: number;
}

/**
 * The next throw of a disc at `power`, a share of smooth above 0. Away from smooth the spread grows
 * (assumption: SOFTNESS_COST).
 *
 * @example
 * powerSpread(row, 1).centre // row.mu
 */
export const powerSpread = (
  { mu, scale, evidence }: Pick<CardRow, "mu" | "scale" | "evidence">,
  power: number,
): PowerSpread => ({
  centre: mu + Math.log(power),
  scale: Math.hypot(scale * Math.sqrt(1 + 1 / evidence), SOFTNESS_COST * (1 - power)),
});

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

// One disc, at whatever power serves best.

/**
 * The greatest chance that a disc finishes in the circle, over its powers; from 0 to 1.
 * Throws `unavailable` where the flight has no answer.
 */
export function bestChance(shot: Shot, row: CardRow, settings: Settings): number {
  const target = targetsOf(shot, conditionsOf(settings))(row);
  if (!target) throw unavailable(messages.flight.outOfReach());
  const chance = chanceOf(row, target, settings.circleM);
  return Math.max(...powersOf(row, settings).map(chance));
}
