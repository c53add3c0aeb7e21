import { DISC_MASS_KG, DISC_POLARS, PLATE_DRAG, STALL_RAD, TYPE_DISTANCES_FT } from "../constants";
import { type CardRow, DISC_TYPES, type DiscType } from "../types";
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
  type,
  distanceM: TYPE_DISTANCES_FT[type] * METRES_PER_FOOT,
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
 * Which disc flies: one of a type; one of unknown type, told by its own smooth carry, m; or, where no
 * disc is meant (null), the one that is usual at the distance of the target.
 */
export type DiscKind = DiscType | number | null;

/** The kind of a disc of the card: its type, else its smooth carry. */
export const kindOf = ({ type, mu }: Pick<CardRow, "type" | "mu">): DiscKind =>
  type ?? Math.exp(mu);

/** Two neighbouring types, and how far from the one to the other a carry lies, 0 to 1. */
export interface Between {
  readonly from: DiscType;
  readonly to: DiscType;
  readonly share: number;
}

/**
 * The types between which a disc of that carry, m, lies (assumption, see TYPE_DISTANCES_FT); the same
 * type twice beyond the first and the last.
 */
export function typesAround(carryM: number): Between {
  const above = ANCHORS.findIndex((anchor) => carryM < anchor.distanceM);
  if (above <= 0) {
    const { type } = ANCHORS.at(above)!;
    return { from: type, to: type, share: 0 };
  }
  const from = ANCHORS[above - 1]!;
  const to = ANCHORS[above]!;
  const share = (carryM - from.distanceM) / (to.distanceM - from.distanceM);
  return { from: from.type, to: to.type, share };
}

/** The polar part of the way from one type to another. */
export const blendedPolar = ({ from, to, share }: Between): Polar =>
  share === 0 ? DISC_POLARS[from] : blend(DISC_POLARS[from], DISC_POLARS[to], share);

/**
 * The polar of a kind of disc for a target at that distance, m; a blend of two types where its type is
 * not known: see typesAround.
 *
 * @example
 * polarFor(null, 60) === polarFor("putter", 60) // true
 */
export const polarFor = (kind: DiscKind, distanceM: number): Polar =>
  typeof kind === "string" ? DISC_POLARS[kind] : blendedPolar(typesAround(kind ?? distanceM));

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

/**
 * The equations of flight: a point mass under gravity, lift and quadratic drag, whose attitude
 * stays fixed in space, for its spin makes it stiff (a gyroscope).
 *
 * Two choices keep them short. Velocity is kept relative to the air, where a uniform wind is
 * at rest, so that wind enters at release and in the position only. And it is kept in the axes
 * of the disc: nose (in its plane, towards the target), side (in its plane, to the right) and
 * top (out of its upper face), where the angle of attack is read off directly.
 */

/** Where a disc is and how it moves: one array, reused, so that flying allocates nothing. */
export type State = Float64Array;

/** Places in a State. Position over the ground; velocity relative to the air, and its change. */
export const TIME_S = 0;
export const ALONG_M = 1;
export const HEIGHT_M = 2;
export const SIDE_M = 3;
export const NOSE_MPS = 4;
export const SIDE_MPS = 5;
export const TOP_MPS = 6;
export const NOSE_MPS2 = 7;
export const SIDE_MPS2 = 8;
export const TOP_MPS2 = 9;
/** How long the next step may be. */
export const STEP_S = 10;

export const newState = (): State => new Float64Array(11);

/** What a throw meets in the air. */
export interface Meeting {
  readonly polar: Polar;
  readonly densityKgM3: number;
  readonly headwindMps: number;
}

/** What stays the same through one flight. */
export interface Craft {
  readonly polar: Polar;
  /** Drag deceleration at drag coefficient 1 over speed squared: ½ρA/m, 1/m. */
  readonly grip: number;
  /** Of the nose above the horizontal. */
  readonly cos: number;
  readonly sin: number;
  readonly headwindMps: number;
  readonly crosswindMps: number;
}

/**
 * A throw at an elevation: of its velocity over the ground, and of the disc, for the nose angle
 * is 0. Crosswind from the left positive.
 */
export function craftOf(meeting: Meeting, elevationRad: number, crosswindMps: number): Craft {
  const { polar, densityKgM3, headwindMps } = meeting;
  const areaM2 = (Math.PI / 4) * polar.diameterM * polar.diameterM;
  return {
    polar,
    grip: (densityKgM3 * areaM2) / (2 * DISC_MASS_KG),
    cos: Math.cos(elevationRad),
    sin: Math.sin(elevationRad),
    headwindMps,
    crosswindMps,
  };
}

/** Upward speed, m/s. */
export const climbMps = (state: State, craft: Craft): number =>
  craft.sin * state[NOSE_MPS]! + craft.cos * state[TOP_MPS]!;

/** How fast that changes, m/s². */
export const climbMps2 = (state: State, craft: Craft): number =>
  craft.sin * state[NOSE_MPS2]! + craft.cos * state[TOP_MPS2]!;

/** Speed over the ground towards the target, m/s. */
export const forwardMps = (state: State, craft: Craft): number =>
  craft.cos * state[NOSE_MPS]! - craft.sin * state[TOP_MPS]! - craft.headwindMps;
