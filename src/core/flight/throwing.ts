import { ALONG_M, craftOf, newState, release } from "./craft";
import { flyDown } from "./fly";
import type { Polar } from "./polar";

/** What a throw meets: its disc, the air, the wind, and the height it comes down at. */
export interface Setting {
  readonly polar: Polar;
  readonly densityKgM3: number;
  readonly headwindMps: number;
  readonly riseM: number;
}

const flight = newState();

/** How far a throw carries, m; −Infinity where it never reaches the height to come down at. */
export function carryM(speedMps: number, elevationRad: number, setting: Setting): number {
  const craft = craftOf({ ...setting, elevationRad, crosswindMps: 0 });
  release(flight, craft, speedMps);
  return flyDown(flight, craft, setting.riseM) ? flight[ALONG_M]! : -Infinity;
}
