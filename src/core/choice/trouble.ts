/** Trouble behind and in front of the target. */
import type { Hole } from "../types";
import type { Candidate } from "./bagInHand";
import { finishM, type SafeCarries } from "./landing";
import type { Target } from "./target";

export type Trouble = Partial<Pick<Hole, "longTroubleM" | "shortTroubleM">>;

/** The level, calm carries that end short of the trouble behind the target and past that in front. */
export function safeCarries(
  { longTroubleM, shortTroubleM }: Trouble,
  { distanceM, playsLikeM }: Target,
): SafeCarries {
  const carryM = (missM: number): number => playsLikeM + (missM * playsLikeM) / distanceM;
  return {
    fromM: shortTroubleM ? Math.max(0, carryM(-shortTroubleM)) : 0,
    toM: longTroubleM ? carryM(longTroubleM) : Infinity,
  };
}

/**
 * The trouble that a throw can meet. Trouble in front that even the longest disc, thrown hardest, is
 * not likely to clear is not in play yet: that throw lays up before it, and the next one will face it.
 */
export function troubleInPlay(task: Trouble, candidates: readonly Candidate[]): Trouble {
  const { longTroubleM = null, shortTroubleM = null } = task;
  const longest = Math.max(
    ...candidates.map(({ thrown, target }) => finishM(thrown.form, thrown.powers.at(-1)!, target)),
  );
  return {
    longTroubleM,
    shortTroubleM: shortTroubleM !== null && longest > -shortTroubleM ? shortTroubleM : null,
  };
}
