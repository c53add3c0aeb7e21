import { ALONG_M, craftOf, forwardMps, newState, type Craft, type Meeting } from "./craft";
import { flyDown, TOLERANCE_MPS } from "./fly";
import { release } from "./step";

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
