import { DISC_MASS_KG } from "../constants";
import type { Polar } from "./polar";

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
