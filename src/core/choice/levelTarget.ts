/** Level, calm targets in the air of the settings. */
import { isStandard } from "../flight/air";
import type { Conditions } from "../flight/conditions";
import { playsLikeCurve } from "../flight/curve";
import type { DiscType } from "../types";
import type { Target } from "./target";

/** The level, calm target at a distance, m above 0, for discs of some type. */
export type LevelTarget = (type: DiscType | null, distanceM: number) => Target;

/** Plays-like distance differs from distance only by the air; in standard air not at all. */
export function levelTargets(conditions: Conditions): LevelTarget {
  if (isStandard(conditions.densityKgM3))
    return (_type, distanceM) => ({ distanceM, playsLikeM: distanceM });
  const curves = new Map<DiscType | null, (distanceM: number) => number>();
  return (type, distanceM) => {
    let curve = curves.get(type);
    if (!curve) curves.set(type, (curve = playsLikeCurve(0, 0, conditions, type)));
    return { distanceM, playsLikeM: curve(distanceM) };
  };
}
