import { DISC_POLARS, PLATE_DRAG, STALL_RAD, TYPE_DISTANCES_FT } from "../constants";
import { DISC_TYPES, type DiscType } from "../types";
import { METRES_PER_FOOT } from "../units";

/** How lift and drag of a disc follow from its angle of attack; see DISC_POLARS. */
export interface Polar {
  readonly diameterM: number;
  readonly lift: number;
  readonly liftSlope: number;
  readonly leastDrag: number;
  readonly dragRise: number;
  readonly leastDragRad: number;
}

const ANCHORS = DISC_TYPES.map((type) => ({
  distanceM: TYPE_DISTANCES_FT[type] * METRES_PER_FOOT,
  polar: DISC_POLARS[type] as Polar,
}));

const between = (from: number, to: number, share: number): number => from + share * (to - from);

const blend = (from: Polar, to: Polar, share: number): Polar => ({
  diameterM: between(from.diameterM, to.diameterM, share),
  lift: between(from.lift, to.lift, share),
  liftSlope: between(from.liftSlope, to.liftSlope, share),
  leastDrag: between(from.leastDrag, to.leastDrag, share),
  dragRise: between(from.dragRise, to.dragRise, share),
  leastDragRad: between(from.leastDragRad, to.leastDragRad, share),
});

/**
 * The polar of a type; where no type is given, the blend of the two types usual at that
 * target distance (assumption, see TYPE_DISTANCES_FT), constant beyond the first and last.
 *
 * @example
 * polarFor(null, 60) === polarFor("putter", 60) // true
 */
export function polarFor(type: DiscType | null, distanceM: number): Polar {
  if (type) return DISC_POLARS[type];
  const above = ANCHORS.findIndex((anchor) => distanceM < anchor.distanceM);
  if (above === -1) return ANCHORS.at(-1)!.polar;
  if (above === 0) return ANCHORS[0]!.polar;
  const from = ANCHORS[above - 1]!;
  const to = ANCHORS[above]!;
  return blend(
    from.polar,
    to.polar,
    (distanceM - from.distanceM) / (to.distanceM - from.distanceM),
  );
}

const RIGHT_ANGLE = Math.PI / 2;

/** Stall at the sign of the angle, and the share of the way from there to face on. */
const stallOf = (attackRad: number): number => (attackRad < 0 ? -STALL_RAD : STALL_RAD);
const plateShare = (attackRad: number): number =>
  (Math.abs(attackRad) - STALL_RAD) / (RIGHT_ANGLE - STALL_RAD);

const attachedLift = (polar: Polar, attackRad: number): number =>
  polar.lift + polar.liftSlope * attackRad;

const attachedDrag = (polar: Polar, attackRad: number): number => {
  const beyond = attackRad - polar.leastDragRad;
  return polar.leastDrag + polar.dragRise * beyond * beyond;
};

/** Lift coefficient at an angle of attack, −π/2 to π/2: beyond stall it fades out towards a plate met face on. */
export const liftAt = (polar: Polar, attackRad: number): number =>
  Math.abs(attackRad) <= STALL_RAD
    ? attachedLift(polar, attackRad)
    : attachedLift(polar, stallOf(attackRad)) * Math.cos(RIGHT_ANGLE * plateShare(attackRad));

/** Drag coefficient at an angle of attack, −π/2 to π/2: beyond stall it goes over to the plate's. */
export function dragAt(polar: Polar, attackRad: number): number {
  if (Math.abs(attackRad) <= STALL_RAD) return attachedDrag(polar, attackRad);
  const atStall = attachedDrag(polar, stallOf(attackRad));
  return atStall + (PLATE_DRAG - atStall) * Math.sin(RIGHT_ANGLE * plateShare(attackRad));
}
