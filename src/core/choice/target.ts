/** What a hole asks of a disc. */
import { DomainError } from "../errors";
import { type Conditions, isStandard } from "../flight/air";
import { type DistanceCurve, playsLikeCurve, playsLikeSdCurve } from "../flight/curve";
import { windDriftM } from "../flight/path";
import { orNaN, playsLikeM, playsLikeSdM } from "../flight/playsLike";
import { type DiscKind, kindOf } from "../flight/polar";
import type { CardRow, Shot } from "../types";

/** A distance, the level, calm, sea-level distance that asks for the same throw, above 0, and one standard deviation of that; m. */
export interface Target {
  readonly distanceM: number;
  readonly playsLikeM: number;
  readonly playsLikeSdM: number;
}

/** One standard deviation of the plays-like distance as a share of it. */
export const doubtOf = ({ playsLikeM, playsLikeSdM: sd }: Target): number => sd / playsLikeM;

/** What of a disc tells how it flies. */
export type Flier = Pick<CardRow, "type" | "mu">;

/**
 * The target that a shot is to a disc, worked out once for discs that fly alike. Where the flight has
 * no answer so far out, the disc can still be thrown towards it: see `towards`. Null where there is
 * none of that either.
 */
export function targetsOf(shot: Shot, conditions: Conditions): (row: Flier) => Target | null {
  const known = new Map<DiscKind, Target | null>();
  return (row) => {
    const kind = kindOf(row);
    if (!known.has(kind)) known.set(kind, targetOf(shot, conditions, kind));
    return known.get(kind) ?? towards(shot, conditions, row);
  };
}

function targetOf(shot: Shot, conditions: Conditions, kind: DiscKind): Target | null {
  const plays = orNaN(() => playsLikeM(shot, conditions, kind));
  // Learnt factors can overdo a drop or a tailwind until nothing is left to throw.
  if (!(plays > 0)) return null;
  const { distanceM } = shot;
  return { distanceM, playsLikeM: plays, playsLikeSdM: playsLikeSdM(shot, conditions, kind) };
}

/**
 * Beyond this share of its smooth carry hardly a throw of a disc ends. What a farther target asks is there of
 * no matter, only what slope, wind and air do to the throw on its way.
 */
const REACH = 1.25;

const reachM = ({ mu }: Flier): number => REACH * Math.exp(mu);

/** A nearer target, and all of its figures, as many times as far away. */
const scaled = (
  { playsLikeM: plays, playsLikeSdM: sd }: Target,
  nearM: number,
  distanceM: number,
) => {
  const times = distanceM / nearM;
  return { distanceM, playsLikeM: plays * times, playsLikeSdM: sd * times };
};

/** The target beyond a disc's reach, as a throw of the disc towards it meets slope, wind and air. */
function towards(shot: Shot, conditions: Conditions, row: Flier): Target | null {
  const nearM = reachM(row);
  if (!(shot.distanceM > nearM)) return null;
  const riseM = (shot.riseM * nearM) / shot.distanceM;
  const near = targetOf({ ...shot, distanceM: nearM, riseM }, conditions, kindOf(row));
  return near && scaled(near, nearM, shot.distanceM);
}

/**
 * How far the crosswind of a shot carries a disc sideways, m, right positive, worked out once for discs
 * that fly alike; 0 where the flight has no answer.
 */
export function driftsOf(
  { distanceM, crosswindMps = 0 }: Shot & { readonly crosswindMps?: number },
  conditions: Conditions,
): (row: Flier) => number {
  if (crosswindMps === 0) return () => 0;
  const known = new Map<DiscKind, number>();
  return (row) => {
    const kind = kindOf(row);
    if (!known.has(kind)) {
      const drift = orNaN(() => windDriftM(distanceM, crosswindMps, conditions, kind));
      known.set(kind, Number.isNaN(drift) ? 0 : drift);
    }
    return known.get(kind)!;
  };
}

// Level, calm targets in the air of the settings.

/**
 * The level, calm target at a distance, m above 0, for a disc, or (null) for one that is usual there;
 * null where the flight has no answer for it.
 */
export type LevelTarget = (row: Flier | null, distanceM: number) => Target | null;

/** The target whose level, calm distance in standard air is its own. */
export const plainTarget = (distanceM: number): Target => ({
  distanceM,
  playsLikeM: distanceM,
  playsLikeSdM: 0,
});

/**
 * Plays-like distance differs from distance only by the air; in standard air not at all. Beyond a disc's
 * reach it grows in proportion, for all that counts there is how far the disc goes in this air.
 */
export function levelTargets(conditions: Conditions): LevelTarget {
  if (isStandard(conditions.densityKgM3)) return (_row, distanceM) => plainTarget(distanceM);
  const curves = new Map<DiscKind, readonly [plays: DistanceCurve, sd: DistanceCurve]>();
  return (row, distanceM) => {
    const kind = row && kindOf(row);
    let found = curves.get(kind);
    if (!found) {
      const [plays, sd] = [playsLikeCurve, playsLikeSdCurve].map((curve) =>
        curve(0, 0, conditions, kind),
      );
      curves.set(kind, (found = [plays!, sd!]));
    }
    const nearM = row ? Math.min(distanceM, reachM(row)) : distanceM;
    const [plays, sd] = found.map((curve) => orNaN(() => curve(nearM))) as [number, number];
    if (!(plays > 0)) return null;
    return scaled({ distanceM: nearM, playsLikeM: plays, playsLikeSdM: sd }, nearM, distanceM);
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
