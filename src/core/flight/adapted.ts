import { FIXED_ELEVATION_RAD, LEAST_ELEVATION_RAD, MOST_ELEVATION_RAD } from "../constants";
import { leastOf, rootOf, type Point } from "./numeric";
import { carryM, type Setting } from "./throwing";

/**
 * How a player throws. Adapted: at the elevation above the slope that serves best in that wind
 * and air. Fixed: at one elevation above the slope, whatever comes.
 */
export type Launch = "adapted" | "fixed";

/** The elevation of a launch, and the value there, that makes a value least. */
const leastOver = (
  launch: Launch,
  slopeRad: number,
  valueAt: (elevationRad: number) => number,
): Point => {
  if (launch === "adapted") {
    return leastOf(valueAt, slopeRad + LEAST_ELEVATION_RAD, slopeRad + MOST_ELEVATION_RAD);
  }
  const elevationRad = slopeRad + FIXED_ELEVATION_RAD;
  return [elevationRad, valueAt(elevationRad)];
};

/** The farthest that a throw of this speed carries on level ground, m. */
export const levelCarryM = (speedMps: number, setting: Setting, launch: Launch): number =>
  -leastOver(launch, 0, (elevationRad) => -carryM(speedMps, elevationRad, setting))[1];

/** Speeds between which a throw is sought, m/s; no arm throws faster. Assumption. */
const LEAST_SPEED_MPS = 0.5;
const MOST_SPEED_MPS = 100;

/** A first guess is bracketed by widening it by this factor. */
const WIDENING = 1.25;

/** Speeds are found to this, m/s. */
const SPEED_TOLERANCE = 1e-6;

/** Infinity where no speed is enough; 0 where the softest is too much. */
function speedAt(
  elevationRad: number,
  distanceM: number,
  setting: Setting,
  guessMps: number,
): number {
  const beyondM = (speedMps: number) => carryM(speedMps, elevationRad, setting) - distanceM;
  let [low, high] = [guessMps, guessMps];
  let [beyondLow, beyondHigh] = [beyondM(low), beyondM(high)];
  while (beyondLow >= 0) {
    if (low < LEAST_SPEED_MPS) return 0;
    [high, beyondHigh] = [low, beyondLow];
    low /= WIDENING;
    beyondLow = beyondM(low);
  }
  while (beyondHigh < 0) {
    if (high > MOST_SPEED_MPS) return Infinity;
    [low, beyondLow] = [high, beyondHigh];
    high *= WIDENING;
    beyondHigh = beyondM(high);
  }
  return rootOf(beyondM, low, high, beyondLow, beyondHigh, SPEED_TOLERANCE);
}

/** A speed, and the elevation that goes with it. */
export interface SoftestThrow {
  readonly elevationRad: number;
  /** Infinity where no throw reaches the target; 0 where the wind alone carries past it. */
  readonly speedMps: number;
}

/**
 * The softest throw that carries to a target: the one of least speed over the elevations of
 * the launch. With an adapted launch that is the speed whose farthest throw just gets there.
 */
export function softestThrow(distanceM: number, setting: Setting, launch: Launch): SoftestThrow {
  const slopeRad = Math.atan2(setting.riseM, distanceM);
  let guessMps = 6 + distanceM / 6;
  const [elevationRad, speedMps] = leastOver(launch, slopeRad, (elevation) => {
    const speed = speedAt(elevation, distanceM, setting, guessMps);
    if (speed > 0 && speed < Infinity) guessMps = speed;
    return speed;
  });
  return { elevationRad, speedMps };
}
