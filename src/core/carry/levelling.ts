/** Bringing the carry of a throw to level, calm, smooth terms, so that throws can be compared. */
import { STANDARD_DENSITY } from "../constants";
import type { Conditions } from "../flight/conditions";
import { playsLikeCurve } from "../flight/curve";
import type { DiscType, Throw } from "../types";

/** The standard's own pressure and temperature give its density to this share only. */
const SAME_AIR = 1e-6;

type Curve = (distanceM: number) => number;

/** The smooth carry, m, that a throw with a disc of that type tells of. */
export type Levelling = (thrown: Throw, type: DiscType | null) => number;

/**
 * The smooth carry, m, that a throw tells of: the plays-like distance of its carry under its own rise
 * and headwind, divided by its power. A level, calm throw in standard air costs nothing. Throws an
 * `unavailable` error where the flight has no answer.
 */
export function levelling(conditions: Conditions): Levelling {
  const standardAir = Math.abs(conditions.densityKgM3 / STANDARD_DENSITY - 1) < SAME_AIR;
  const curves = new Map<string, Curve>();
  return (thrown, type) => {
    const { carryM, riseM, headwindMps, power } = thrown;
    if (standardAir && riseM === 0 && headwindMps === 0) return carryM / power;
    const key = `${type ?? ""} ${riseM} ${headwindMps}`;
    let curve = curves.get(key);
    if (!curve) curves.set(key, (curve = playsLikeCurve(riseM, headwindMps, conditions, type)));
    return curve(carryM) / power;
  };
}
