import type { DiscType } from "../types";
import type { Conditions } from "./conditions";
import { flightPath } from "./path";

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
  type: DiscType | null,
): number =>
  flightPath({ distanceM, riseM: 0, headwindMps: 0, crosswindMps }, conditions, type).at(-1)!.sideM;
