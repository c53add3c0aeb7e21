import { GRAVITY, RELEASE_HEIGHT_M } from "../constants";
import {
  ALONG_M,
  climbMps,
  climbMps2,
  type Craft,
  craftOf,
  dragAt,
  forwardMps,
  HEIGHT_M,
  liftAt,
  type Meeting,
  newState,
  NOSE_MPS,
  NOSE_MPS2,
  SIDE_M,
  SIDE_MPS,
  SIDE_MPS2,
  type State,
  STEP_S,
  TIME_S,
  TOP_MPS,
  TOP_MPS2,
} from "./polar";

/** Keeps the angle of attack defined for a disc that falls exactly face on, m/s. */
const LEAST_IN_PLANE_MPS = 1e-9;

/** Length of the first step that is tried, s. */
const FIRST_STEP_S = 0.05;

/** Acceleration by the last call of `accelerate`, in the axes of the disc: nose, side, top. */
const acceleration = new Float64Array(3);

/**
 * Lift and drag of `m·a = ½ρ|v|²A (CL·up − CD·along) − m·g`, written out in the axes of the
 * disc. With p the speed in its plane and t the speed out of its top, "along" is (p, t)/|v|
 * and "up" is (−t, p)/|v|, the angle of attack is −atan(t/p).
 */
function accelerate(craft: Craft, nose: number, side: number, top: number): void {
  const inPlane = Math.sqrt(nose * nose + side * side) + LEAST_IN_PLANE_MPS;
  const tilt = top / inPlane;
  const attackRad = -Math.atan(tilt);
  const strength = craft.grip * inPlane * Math.sqrt(1 + tilt * tilt);
  const lift = liftAt(craft.polar, attackRad);
  const drag = dragAt(craft.polar, attackRad);
  const braking = strength * (drag + lift * tilt);
  acceleration[0] = -braking * nose - GRAVITY * craft.sin;
  acceleration[1] = -braking * side;
  acceleration[2] = strength * (lift * inPlane - drag * top) - GRAVITY * craft.cos;
}

/**
 * Writes to `to` the state that `from` comes to in `stepS` seconds, back where negative; both
 * may be the same. Air and wind are uniform, so acceleration follows from velocity alone.
 * Returns about how far off the new velocity is, m/s.
 *
 * The classical Runge-Kutta rule, whose error is told by the rule of third order embedded in
 * it with the weights 1/6, 1/3, 1/3, 1/15, 1/10 of its four slopes and of the slope at the end:
 * that one is needed for the next step anyway.
 */
export function step(from: State, to: State, craft: Craft, stepS: number): number {
  const nose = from[NOSE_MPS]!;
  const side = from[SIDE_MPS]!;
  const top = from[TOP_MPS]!;
  const half = stepS / 2;
  const sixth = stepS / 6;

  const nose1 = from[NOSE_MPS2]!;
  const side1 = from[SIDE_MPS2]!;
  const top1 = from[TOP_MPS2]!;
  accelerate(craft, nose + half * nose1, side + half * side1, top + half * top1);
  const nose2 = acceleration[0]!;
  const side2 = acceleration[1]!;
  const top2 = acceleration[2]!;
  accelerate(craft, nose + half * nose2, side + half * side2, top + half * top2);
  const nose3 = acceleration[0]!;
  const side3 = acceleration[1]!;
  const top3 = acceleration[2]!;
  accelerate(craft, nose + stepS * nose3, side + stepS * side3, top + stepS * top3);
  const nose4 = acceleration[0]!;
  const side4 = acceleration[1]!;
  const top4 = acceleration[2]!;

  const noseM = stepS * (nose + sixth * (nose1 + nose2 + nose3));
  const sideM = stepS * (side + sixth * (side1 + side2 + side3));
  const topM = stepS * (top + sixth * (top1 + top2 + top3));
  to[TIME_S] = from[TIME_S]! + stepS;
  to[ALONG_M] = from[ALONG_M]! + craft.cos * noseM - craft.sin * topM - stepS * craft.headwindMps;
  to[HEIGHT_M] = from[HEIGHT_M]! + craft.sin * noseM + craft.cos * topM;
  to[SIDE_M] = from[SIDE_M]! + sideM + stepS * craft.crosswindMps;
  setVelocity(
    to,
    craft,
    nose + sixth * (nose1 + 2 * (nose2 + nose3) + nose4),
    side + sixth * (side1 + 2 * (side2 + side3) + side4),
    top + sixth * (top1 + 2 * (top2 + top3) + top4),
  );
  const noseOff = nose4 - to[NOSE_MPS2]!;
  const sideOff = side4 - to[SIDE_MPS2]!;
  const topOff = top4 - to[TOP_MPS2]!;
  return (stepS / 10) * Math.sqrt(noseOff * noseOff + sideOff * sideOff + topOff * topOff);
}

/** Sets the velocity relative to the air, in the axes of the disc, and what follows from it. */
export function setVelocity(
  state: State,
  craft: Craft,
  nose: number,
  side: number,
  top: number,
): void {
  accelerate(craft, nose, side, top);
  state[NOSE_MPS] = nose;
  state[SIDE_MPS] = side;
  state[TOP_MPS] = top;
  state[NOSE_MPS2] = acceleration[0]!;
  state[SIDE_MPS2] = acceleration[1]!;
  state[TOP_MPS2] = acceleration[2]!;
}

/** Sets a state to the moment of release. */
export function release(state: State, craft: Craft, speedMps: number): void {
  const { headwindMps, crosswindMps, cos, sin } = craft;
  state.fill(0);
  state[HEIGHT_M] = RELEASE_HEIGHT_M;
  state[STEP_S] = FIRST_STEP_S;
  setVelocity(state, craft, speedMps + headwindMps * cos, -crosswindMps, -headwindMps * sin);
}

/** Error of velocity that one step may make, m/s; no landing is then off by 1 mm. */
export const TOLERANCE_MPS = 1e-5;

/** No step is longer, s: the turns of a flight must not fall between two. */
const LONGEST_STEP_S = 0.5;

/** A step may be this much longer or shorter than the one before, and aims a little low. */
const MOST_GROWTH = 2;
const MOST_CUT = 0.1;
const CAUTION = 0.9;

/** Writes to `to` what `from` comes to in one step, as long as the tolerance allows. */
export function advance(from: State, to: State, craft: Craft, toleranceMps: number): void {
  let stepS = from[STEP_S]!;
  for (;;) {
    const errorMps = step(from, to, craft, stepS);
    const room = CAUTION * Math.sqrt(Math.sqrt(toleranceMps / errorMps));
    const nextS = stepS * Math.max(MOST_CUT, Math.min(MOST_GROWTH, room));
    if (!(errorMps > toleranceMps)) {
      to[STEP_S] = Math.min(LONGEST_STEP_S, nextS);
      return;
    }
    stepS = nextS;
  }
}

/** A disc still in the air by now, s, is not followed any longer. */
const LONGEST_FLIGHT_S = 60;

/** Newton's rule is used at most so often, down to a height this near, m. */
const MOST_CUTS = 8;
const LANDED_M = 1e-9;

/** Moves a flight, which turns down about here, to its highest point. */
function toApex(state: State, craft: Craft): void {
  for (let cut = 0; cut < MOST_CUTS && Math.abs(climbMps(state, craft)) > LANDED_M; cut++) {
    step(state, state, craft, -climbMps(state, craft) / climbMps2(state, craft));
  }
}

/** Moves a flight, which comes down about here, to where it is `landingM` high. */
function toLanding(state: State, craft: Craft, landingM: number): void {
  for (let cut = 0; cut < MOST_CUTS; cut++) {
    const aboveM = state[HEIGHT_M]! - landingM;
    if (Math.abs(aboveM) < LANDED_M) return;
    step(state, state, craft, -aboveM / climbMps(state, craft));
  }
}

/** Takes turns with the caller's state, so that flying allocates nothing. */
const other = newState();

/**
 * Flies a released disc to where it comes down through `landingM` (height over the ground at
 * the throw), and leaves the state there. False where it never gets that high, or does not
 * come down within a minute; the state then says nothing.
 */
export function flyDown(
  state: State,
  craft: Craft,
  landingM: number,
  toleranceMps = TOLERANCE_MPS,
): boolean {
  let here = state;
  let next = other;
  let highestM = state[HEIGHT_M]!;
  do {
    if (here[TIME_S]! > LONGEST_FLIGHT_S) return false;
    advance(here, next, craft, toleranceMps);
    const passed = here;
    here = next;
    next = passed;
    highestM = Math.max(highestM, here[HEIGHT_M]!);
  } while (here[HEIGHT_M]! > landingM || climbMps(here, craft) >= 0);
  if (highestM < landingM) {
    // Not at the end of a step; but perhaps at the top, within the last one.
    toApex(here, craft);
    const overM = here[HEIGHT_M]! - landingM;
    if (overM < 0) return false;
    step(here, here, craft, Math.sqrt((-2 * overM) / climbMps2(here, craft)));
  }
  toLanding(here, craft, landingM);
  if (here !== state) state.set(here);
  return true;
}

/** What a throw meets, and the height over the throwing spot that it comes down at. */
export interface Setting extends Meeting {
  readonly riseM: number;
}

const flight = newState();

/** Throws, and follows the disc down; see flyDown. */
function fly(
  speedMps: number,
  elevationRad: number,
  setting: Setting,
  toleranceMps: number,
): Craft | null {
  const craft = craftOf(setting, elevationRad, 0);
  release(flight, craft, speedMps);
  return flyDown(flight, craft, setting.riseM, toleranceMps) ? craft : null;
}

/** How far a throw carries, m; −Infinity where it never reaches the height to come down at. */
export const carryM = (
  speedMps: number,
  elevationRad: number,
  setting: Setting,
  toleranceMps = TOLERANCE_MPS,
): number => (fly(speedMps, elevationRad, setting, toleranceMps) ? flight[ALONG_M]! : -Infinity);

/** Whether a throw still moves towards the target when it comes down. */
export function landsForward(speedMps: number, elevationRad: number, setting: Setting): boolean {
  const craft = fly(speedMps, elevationRad, setting, TOLERANCE_MPS);
  return craft !== null && forwardMps(flight, craft) > 0;
}
