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
    return { distanceM: shot.distanceM, playsLikeM: playsLikeM(shot, conditions, type) };
  } catch (thrown) {
    if (thrown instanceof DomainError && thrown.code === "unavailable") return null;
    throw thrown;
  }
}
