/** What a hole asks of a disc. */
import { DomainError } from "../errors";
import { type Conditions, isStandard } from "../flight/air";
import { type DistanceCurve, playsLikeCurve, playsLikeSdCurve } from "../flight/curve";
import { orNaN, playsLikeM, playsLikeSdM } from "../flight/playsLike";
import { type DiscKind, kindOf } from "../flight/polar";
import type { CardRow, Shot } from "../types";

/** A distance, the level, calm, sea-level distance that asks for the same throw, above 0, and one standard deviation of that; m. */
export interface Target {
  readonly distanceM: number;
  readonly playsLikeM: number;
  readonly playsLikeSdM: number;
}

/** What of a disc tells how it flies. */
export type Flier = Pick<CardRow, "type" | "mu">;

/**
 * The target that a shot is to a disc, worked out once for discs that fly alike; null where the
 * flight has no answer for it.
 */
export function targetsOf(shot: Shot, conditions: Conditions): (row: Flier) => Target | null {
  const known = new Map<DiscKind, Target | null>();
  return (row) => {
    const kind = kindOf(row);
    if (!known.has(kind)) known.set(kind, targetOf(shot, conditions, kind));
    return known.get(kind)!;
  };
}

function targetOf(shot: Shot, conditions: Conditions, kind: DiscKind): Target | null {
  const plays = orNaN(() => playsLikeM(shot, conditions, kind));
  // Learnt factors can overdo a drop or a tailwind until nothing is left to throw.
  if (!(plays > 0)) return null;
  const { distanceM } = shot;
  return { distanceM, playsLikeM: plays, playsLikeSdM: playsLikeSdM(shot, conditions, kind) };
}

// Level, calm targets in the air of the settings.

/** The level, calm target at a distance, m above 0, for a disc; null where the flight has no answer for it. */
export type LevelTarget = (row: Flier, distanceM: number) => Target | null;

/** The target whose level, calm distance in standard air is its own. */
export const plainTarget = (distanceM: number): Target => ({
  distanceM,
  playsLikeM: distanceM,
  playsLikeSdM: 0,
});

/** Plays-like distance differs from distance only by the air; in standard air not at all. */
export function levelTargets(conditions: Conditions): LevelTarget {
  if (isStandard(conditions.densityKgM3)) return (_row, distanceM) => plainTarget(distanceM);
  const curves = new Map<DiscKind, readonly [plays: DistanceCurve, sd: DistanceCurve]>();
  return (row, distanceM) => {
    const kind = kindOf(row);
    let found = curves.get(kind);
    if (!found) {
      const [plays, sd] = [playsLikeCurve, playsLikeSdCurve].map((curve) =>
        curve(0, 0, conditions, kind),
      );
      curves.set(kind, (found = [plays!, sd!]));
    }
    const plays = orNaN(() => found[0](distanceM));
    return plays > 0
      ? { distanceM, playsLikeM: plays, playsLikeSdM: orNaN(() => found[1](distanceM)) }
      : null;
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
