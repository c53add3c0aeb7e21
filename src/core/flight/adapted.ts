import { FIXED_ELEVATION_RAD, LEAST_ELEVATION_RAD, MOST_ELEVATION_RAD } from "../constants";
import { leastOf } from "./leastOf";
import { FINE, ROUGH, speedFor, type SpeedFound } from "./speedFor";
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
export function levelCarryM(speedMps: number, setting: Setting, launch: Launch): number {
  const shortBy = (elevationRad: number) =>
    -carryM(speedMps, elevationRad, setting, ROUGH.flightMps);
  return carryM(speedMps, leastAt(launch, 0, shortBy), setting);
}

/** Where the search for a speed begins: carry grows about as the square of the speed. */
function usualThrow(distanceM: number): SpeedFound {
  const speedMps = 2.3 * Math.sqrt(distanceM);
  return { speedMps, gainS: (2 * distanceM) / speedMps };
}

/** A speed, and the elevation that goes with it. */
export interface SoftestThrow {
  readonly elevationRad: number;
  /** Infinity where no throw gets to the target; 0 where the wind would outrun the throw. */
  readonly speedMps: number;
}

/**
 * `softestThrow`, also where the wind blows the disc back by the time it comes down: no throw
 * that a player can use, but its figures go on smoothly from those of one.
 */
export function softestEvenBlownBack(
  distanceM: number,
  setting: Setting,
  launch: Launch,
): SoftestThrow {
  const slopeRad = Math.atan2(setting.riseM, distanceM);
  let least = Infinity;
  let guess = usualThrow(distanceM);
  const roughMps = (elevationRad: number) => {
    const found = speedFor(distanceM, elevationRad, setting, guess, ROUGH);
    if (found.speedMps > 0 && found.speedMps < least) {
      least = found.speedMps;
      guess = found;
    }
    return found.speedMps;
  };
  const elevationRad = leastAt(launch, slopeRad, roughMps);
  if (launch === "fixed") roughMps(elevationRad);
  const { speedMps } = speedFor(distanceM, elevationRad, setting, guess, FINE);
  const outrun = speedMps <= Math.abs(setting.headwindMps);
  return { elevationRad, speedMps: outrun ? 0 : speedMps };
}

/**
 * The softest throw that carries to a target: the one of least speed over the elevations of
 * the launch. With an adapted launch that is the speed whose farthest throw just gets there.
 * The elevation is found with rough flights: about the best, speed hardly depends on it.
 *
 * Two kinds of flight are not counted, for a breath of wind changes all about them: a throw
 * slower than the wind, and one that is blown back by the time it comes down.
 */
export function softestThrow(distanceM: number, setting: Setting, launch: Launch): SoftestThrow {
  const { elevationRad, speedMps } = softestEvenBlownBack(distanceM, setting, launch);
  const flies = speedMps > 0 && speedMps < Infinity;
  const blownBack = flies && !landsForward(speedMps, elevationRad, setting);
  return { elevationRad, speedMps: blownBack ? Infinity : speedMps };
}
