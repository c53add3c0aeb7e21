import { GRAVITY } from "../constants";
import {
  ALONG_M,
  HEIGHT_M,
  NOSE_MPS,
  SIDE_M,
  SIDE_MPS,
  TIME_S,
  TOP_MPS,
  type Craft,
  type State,
} from "./craft";
import { dragAt, liftAt } from "./polar";

/** Keeps the angle of attack defined for a disc that falls exactly face on, m/s. */
const LEAST_IN_PLANE_MPS = 1e-9;

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
 * Writes to `to` the state that `from` comes to in `stepS` seconds, back where negative, by the
 * classical Runge-Kutta rule; both may be the same. Air and wind are uniform, so acceleration
 * follows from velocity alone.
 */
export function step(from: State, to: State, craft: Craft, stepS: number): void {
  const nose = from[NOSE_MPS]!;
  const side = from[SIDE_MPS]!;
  const top = from[TOP_MPS]!;
  const half = stepS / 2;
  const sixth = stepS / 6;

  accelerate(craft, nose, side, top);
  const nose1 = acceleration[0]!;
  const side1 = acceleration[1]!;
  const top1 = acceleration[2]!;
  accelerate(craft, nose + half * nose1, side + half * side1, top + half * top1);
  const nose2 = acceleration[0]!;
  const side2 = acceleration[1]!;
  const top2 = acceleration[2]!;
  accelerate(craft, nose + half * nose2, side + half * side2, top + half * top2);
  const nose3 = acceleration[0]!;
  const side3 = acceleration[1]!;
  const top3 = acceleration[2]!;
  accelerate(craft, nose + stepS * nose3, side + stepS * side3, top + stepS * top3);

  const noseM = stepS * (nose + sixth * (nose1 + nose2 + nose3));
  const sideM = stepS * (side + sixth * (side1 + side2 + side3));
  const topM = stepS * (top + sixth * (top1 + top2 + top3));
  to[TIME_S] = from[TIME_S]! + stepS;
  to[ALONG_M] = from[ALONG_M]! + craft.cos * noseM - craft.sin * topM - stepS * craft.headwindMps;
  to[HEIGHT_M] = from[HEIGHT_M]! + craft.sin * noseM + craft.cos * topM;
  to[SIDE_M] = from[SIDE_M]! + sideM + stepS * craft.crosswindMps;
  to[NOSE_MPS] = nose + sixth * (nose1 + 2 * (nose2 + nose3) + acceleration[0]!);
  to[SIDE_MPS] = side + sixth * (side1 + 2 * (side2 + side3) + acceleration[1]!);
  to[TOP_MPS] = top + sixth * (top1 + 2 * (top2 + top3) + acceleration[2]!);
}
