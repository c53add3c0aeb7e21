import { GRAVITY, RELEASE_HEIGHT_M } from "../constants";
import {
  ALONG_M,
  HEIGHT_M,
  NOSE_MPS,
  NOSE_MPS2,
  SIDE_M,
  SIDE_MPS,
  SIDE_MPS2,
  STEP_S,
  TIME_S,
  TOP_MPS,
  TOP_MPS2,
  type Craft,
  type State,
} from "./craft";
import { dragAt, liftAt } from "./polar";

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
