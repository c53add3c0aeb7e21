/** What a hole asks of a disc. */
import { DomainError } from "../errors";
import { type Conditions, isStandard } from "../flight/air";
import { playsLikeCurve } from "../flight/curve";
import { playsLikeM } from "../flight/playsLike";
import type { DiscType, Shot } from "../types";

/** A distance, and the level, calm, sea-level distance that asks for the same throw; m, above 0. */
export interface Target {
  readonly distanceM: number;
  readonly playsLikeM: number;
}

/**
 * The target that a shot is to a disc of some type, worked out once for each type; null where the
 * flight has no answer for that type.
 */
export function targetsOf(
  shot: Shot,
  conditions: Conditions,
): (type: DiscType | null) => Target | null {
  const known = new Map<DiscType | null, Target | null>();
  return (type) => {
    if (!known.has(type)) known.set(type, targetOf(shot, conditions, type));
    return known.get(type)!;
  };
}

function targetOf(shot: Shot, conditions: Conditions, type: DiscType | null): Target | null {
  try {
    const plays = playsLikeM(shot, conditions, type);
    // Learnt factors can overdo a drop or a tailwind until nothing is left to throw.
    return plays > 0 ? { distanceM: shot.distanceM, playsLikeM: plays } : null;
  } catch (thrown) {
    if (thrown instanceof DomainError && thrown.code === "unavailable") return null;
    throw thrown;
  }
}

// Level, calm targets in the air of the settings.

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

/** An answer, or the sentence that says why there is none. */
export function orWhy<Answer>(ask: () => Answer): { answer: Answer | null; why: string | null } {
  try {
    return { answer: ask(), why: null };
  } catch (thrown) {
    if (thrown instanceof DomainError && thrown.code === "unavailable")
      return { answer: null, why: thrown.message };
    throw thrown;
  }
}
