/** The chance to finish in the circle. */
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { messages } from "../messages";
import type { CardRow, Settings, Shot } from "../types";
import { courseForm, powerSpread, type ThrowForm } from "./courseForm";
import { powersOf } from "./power";
import {
  type CirclePoints,
  enoughPoints,
  gaussLegendre,
  shareWithin,
  type SpreadM,
  tDensity,
} from "./quadrature";
import { doubtOf, type Target, targetsOf } from "./target";
import { type Edges, edgesOf, type Trouble } from "./trouble";

// The chance at one power.

/** What may keep a throw out of the circle beside its spread. */
export interface Play {
  /** Where the line goes, m right of the target. */
  readonly aimM?: number;
  readonly trouble?: Trouble;
}

/**
 * The chance that a disc at some power, a share of smooth, finishes within `circleM` of a target and not in
 * trouble: the integral over the diameter of the density of the miss along the line, times the share of
 * sideways angles that stay within the circle there. Absolute error below 1e-6 for circles no wider than
 * the distance, 1e-4 where trouble cuts into the circle. A throw of level carry L, ln L being
 * t-distributed, misses by (L − D*)·D/D*; the bias is aimed off.
 *
 * @example
 * chanceOf(courseForm(row, settings), plainTarget(90), 10)(0.95) // from 0 to 1
 */
export function chanceOf(
  form: ThrowForm,
  target: Target,
  circleM: number,
  { aimM = 0, trouble = {} }: Play = {},
): (power: number) => number {
  const { freedom, side } = form;
  const { distanceM, playsLikeM } = target;
  const stretch = distanceM / playsLikeM;
  const doubt = doubtOf(target);
  const edges = edgesOf(trouble);
  const { alongM, halfWidthM, weightM } = pointsWithin(circleM, edges, [
    { scaleM: powerSpread(form, 1, doubt).scale * distanceM, freedom },
    { scaleM: side.scaleRad * distanceM, freedom: side.freedom },
  ]);
  const density = tDensity(freedom);
  const within = shareWithin(side.freedom);
  /** Half the share within as far to either side, negative to the left: its differences are shares between. */
  const upTo = (sideM: number): number => {
    const scales = Math.atan((sideM - aimM) / distanceM) / side.scaleRad;
    return (Math.sign(scales) * within(Math.abs(scales))) / 2;
  };
  const lnCarry = alongM.map((miss) => Math.log(playsLikeM + miss / stretch));
  // Density of the miss from the density of ln carry: divided by the carry and by the stretch.
  const share = weightM.map((weight, at) => {
    const carryM = playsLikeM + alongM[at]! / stretch;
    if (!(carryM > 0)) return 0;
    const right = upTo(Math.min(halfWidthM[at]!, edges.rightM));
    const left = upTo(Math.max(-halfWidthM[at]!, edges.leftM));
    return (weight * Math.max(0, right - left)) / (carryM * stretch);
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

/** Points of a diameter that trouble has cut short. */
const CUT_POINTS = 64;

function pointsWithin(
  circleM: number,
  { frontM, behindM }: Edges,
  spreads: readonly SpreadM[],
): CirclePoints {
  if (frontM <= -circleM && behindM >= circleM) return enoughPoints(circleM, spreads);
  const angle = (alongM: number): number => Math.asin(Math.max(-1, Math.min(alongM / circleM, 1)));
  const { nodes, weights } = gaussLegendre(CUT_POINTS, angle(frontM), angle(behindM));
  return {
    alongM: nodes.map((theta) => circleM * Math.sin(theta)),
    halfWidthM: nodes.map((theta) => circleM * Math.cos(theta)),
    weightM: weights.map((weight, at) => weight * circleM * Math.cos(nodes[at]!)),
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
