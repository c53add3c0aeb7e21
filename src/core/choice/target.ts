/** What a hole asks of a disc. */
import { DomainError } from "../errors";
import type { Conditions } from "../flight/conditions";
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
