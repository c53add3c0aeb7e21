import { FIXED_ELEVATION_RAD, LEAST_ELEVATION_RAD, MOST_ELEVATION_RAD } from "../constants";
import { leastOf } from "./leastOf";
import { FINE, ROUGH, speedFor } from "./speedFor";
import { carryM, landsForward, type Setting } from "./throwing";

/**
 * How a player throws. Adapted: at the elevation above the slope that serves best in that wind
 * and air. Fixed: at one elevation above the slope, whatever comes.
 */
export type Launch = "adapted" | "fixed";

/** The elevation, rad, of a launch that makes a value least. */
const leastAt = (
  launch: Launch,
  slopeRad: number,
  valueAt: (elevationRad: number) => number,
): number =>
  launch === "fixed"
    ? slopeRad + FIXED_ELEVATION_RAD
    : leastOf(valueAt, slopeRad + LEAST_ELEVATION_RAD, slopeRad + MOST_ELEVATION_RAD)[0];

/** The farthest that a throw of this speed carries on level ground, m. */
export const levelCarryM = (speedMps: number, setting: Setting, launch: Launch): number => {
  const shortBy = (elevationRad: number) =>
    -carryM(speedMps, elevationRad, setting, ROUGH.flightMps);
  return carryM(speedMps, leastAt(launch, 0, shortBy), setting);
};

/** Where the search for a speed begins, m/s. */
const USUAL_SPEED_MPS = 20;

/** A speed, and the elevation that goes with it. */
export interface SoftestThrow {
  readonly elevationRad: number;
  /** Infinity where no throw gets to the target; 0 where the wind would outrun the throw. */
  readonly speedMps: number;
}

/**
 * The softest throw that carries to a target: the one of least speed over the elevations of
 * the launch. With an adapted launch that is the speed whose farthest throw just gets there.
 *
 * Two kinds of flight are not counted, for a breath of wind changes all about them: a throw
 * slower than the wind, and one that is blown back by the time it comes down.
 */
export function softestThrow(distanceM: number, setting: Setting, launch: Launch): SoftestThrow {
  const slopeRad = Math.atan2(setting.riseM, distanceM);
  let guessMps = USUAL_SPEED_MPS;
  const elevationRad = leastAt(launch, slopeRad, (elevation) => {
    const speed = speedFor(distanceM, elevation, setting, guessMps, ROUGH);
    if (speed > 0 && speed < Infinity) guessMps = speed;
    return speed;
  });
  const speedMps = speedFor(distanceM, elevationRad, setting, guessMps, FINE);
  if (speedMps === Infinity) return { elevationRad, speedMps };
  if (speedMps <= Math.abs(setting.headwindMps)) return { elevationRad, speedMps: 0 };
  const counts = landsForward(speedMps, elevationRad, setting);
  return { elevationRad, speedMps: counts ? speedMps : Infinity };
}
