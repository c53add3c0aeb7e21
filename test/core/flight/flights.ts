/** Short ways to throw a disc in a test, and to read where it came down. */
import {
  ALONG_M,
  type Craft,
  craftOf,
  HEIGHT_M,
  newState,
  polarFor,
  SIDE_M,
  TIME_S,
} from "../../../src/core/flight/polar";
import { flyDown, release } from "../../../src/core/flight/integrator";
import type { DiscType } from "../../../src/core/types";
import { toRadians } from "../../../src/core/units";

export interface Thrown {
  readonly type: DiscType;
  readonly speedMps: number;
  readonly elevationDeg: number;
  readonly headwindMps: number;
  readonly crosswindMps: number;
  readonly densityKgM3: number;
  readonly landingM: number;
}

export const plain: Thrown = {
  type: "fairway",
  speedMps: 22,
  elevationDeg: 8,
  headwindMps: 0,
  crosswindMps: 0,
  densityKgM3: 1.225,
  landingM: 0,
};

export const craftFor = ({ type, elevationDeg, crosswindMps, ...air }: Thrown): Craft =>
  craftOf({ ...air, polar: polarFor(type, 0) }, toRadians(elevationDeg), crosswindMps);

/** Comes down at: along, height, to the right, m, and after so many seconds. */
export function landingOf(craft: Craft, speedMps: number, landingM: number, toleranceMps?: number) {
  const state = newState();
  release(state, craft, speedMps);
  const down = flyDown(state, craft, landingM, toleranceMps);
  return {
    down,
    alongM: state[ALONG_M]!,
    heightM: state[HEIGHT_M]!,
    sideM: state[SIDE_M]!,
    timeS: state[TIME_S]!,
  };
}

export const throwIt = (change: Partial<Thrown>, toleranceMps?: number) => {
  const thrown = { ...plain, ...change };
  return landingOf(craftFor(thrown), thrown.speedMps, thrown.landingM, toleranceMps);
};
