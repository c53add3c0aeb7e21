import { STANDARD_DENSITY } from "../constants";
import { DISC_TYPES, type DiscType } from "../types";
import { levelCarryM, type Launch } from "./adapted";
import { cubic } from "./cubic";
import { polarFor, type Polar } from "./polar";

/** How far a throw of this speed, m/s, carries on level ground in calm standard air, m. */
export const calmLevelM = (polar: Polar, speedMps: number, launch: Launch): number =>
  levelCarryM(speedMps, { polar, densityKgM3: STANDARD_DENSITY, headwindMps: 0, riseM: 0 }, launch);

/** The figures for a type are worked out at each multiple of this speed, when first needed. */
const KNOT_MPS = 1;

/** Slower than this knot a throw is little more than a drop, and is worked out itself. */
const FIRST_KNOT = 4;

type Curve = (speedMps: number) => number;

function curveOf(type: DiscType): Curve {
  const polar = polarFor(type, 0);
  const exact = (speedMps: number) => calmLevelM(polar, speedMps, "adapted");
  const knots: number[] = [];
  const knot = (index: number) => (knots[index] ??= exact(index * KNOT_MPS));
  return (speedMps) => {
    const place = speedMps / KNOT_MPS;
    const first = Math.floor(place) - 1;
    if (first < FIRST_KNOT) return exact(speedMps);
    const [y0, y1, y2, y3] = [knot(first), knot(first + 1), knot(first + 2), knot(first + 3)];
    return cubic(y0, y1, y2, y3, place - first);
  };
}

/**
 * `calmLevelM` of an adapted throw, by type of disc: as it depends on the speed alone, it is a
 * cubic through four of the figures at every m/s, within 0.03 ft.
 */
export const CALM_LEVEL_M = Object.fromEntries(
  DISC_TYPES.map((type) => [type, curveOf(type)]),
) as Record<DiscType, Curve>;
