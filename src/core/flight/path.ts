import type { Shot } from "../types";
import { softestThrow } from "./adapted";
import type { Conditions } from "./air";
import { flyDown, release, step } from "./integrator";
import { checkShot, checkWind, reached } from "./playsLike";
import {
  ALONG_M,
  craftOf,
  type DiscKind,
  HEIGHT_M,
  newState,
  polarFor,
  SIDE_M,
  type State,
  TIME_S,
} from "./polar";

/** Where the disc is at one moment, over the throwing spot's ground. */
export interface FlightPoint {
  readonly alongM: number;
  readonly heightM: number;
  /** Right positive. */
  readonly sideM: number;
  readonly timeS: number;
}

/** Points of a path after the release, even in time, and steps of the flight between two. */
const POINTS = 60;
const STEPS_PER_POINT = 4;

const pointOf = (state: State): FlightPoint => ({
  alongM: state[ALONG_M]!,
  heightM: state[HEIGHT_M]!,
  sideM: state[SIDE_M]!,
  timeS: state[TIME_S]!,
});

/**
 * The path of the throw that just reaches a target, for a drawing: 61 points from the release
 * to the landing, even in time. Adapted throw as in `playsLikeM`, with the errors of that; a
 * crosswind (m/s, from the left positive) only pushes it aside, the player does not aim off.
 * A drawing of how a typical disc gets there, not a forecast of this throw.
 *
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * flightPath({ distanceM: 100, riseM: 0, headwindMps: 0 }, air, null).length // 61
 */
export function flightPath(
  shot: Shot & { readonly crosswindMps?: number },
  { densityKgM3 }: Conditions,
  kind: DiscKind,
): FlightPoint[] {
  checkShot(shot);
  const { distanceM, riseM, headwindMps, crosswindMps = 0 } = shot;
  checkWind(crosswindMps);
  const setting = { polar: polarFor(kind, distanceM), densityKgM3, headwindMps, riseM };
  const { elevationRad, speedMps } = softestThrow(distanceM, setting);
  const craft = craftOf(setting, elevationRad, crosswindMps);
  const state = newState();
  release(state, craft, reached(speedMps));
  flyDown(state, craft, riseM);
  const landing = pointOf(state);
  const points: FlightPoint[] = [];
  release(state, craft, speedMps);
  for (let point = 0; point < POINTS; point++) {
    points.push(pointOf(state));
    for (let part = 0; part < STEPS_PER_POINT; part++) {
      step(state, state, craft, landing.timeS / POINTS / STEPS_PER_POINT);
    }
  }
  return [...points, landing];
}

/**
 * How far a crosswind carries a throw sideways, m, right positive for a wind from the left
 * (m/s). For the adapted throw that goes `distanceM` on level ground without wind along it,
 * its disc level from side to side; a disc that turns in the air goes elsewhere, so this is the
 * wind's own part only. 0 without wind. Errors as `playsLikeM`.
 *
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * windDriftM(100, 5, air, null) // metres to the right
 */
export const windDriftM = (
  distanceM: number,
  crosswindMps: number,
  conditions: Conditions,
  kind: DiscKind,
): number =>
  flightPath({ distanceM, riseM: 0, headwindMps: 0, crosswindMps }, conditions, kind).at(-1)!.sideM;
