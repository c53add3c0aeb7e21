import { DISC_TYPES, type Shot } from "../types";
import type { Launch } from "./adapted";
import type { Conditions } from "./conditions";
import { orNaN } from "./orNaN";
import { playsLikeByLaunchM, playsLikeM } from "./playsLike";

export interface PlaysLikeBand {
  readonly lowM: number;
  readonly likelyM: number;
  readonly highM: number;
}

const LAUNCHES: readonly Launch[] = ["adapted", "fixed"];

/**
 * How far apart the answers lie that the physics allows, m: least and greatest plays-like
 * distance over the four types of disc, thrown adapted and at a fixed elevation, with the
 * likely answer of `playsLikeM` between them. A kind of throw that cannot reach the target
 * does not widen the band. Errors as there.
 *
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * playsLikeBandM({ distanceM: 100, riseM: 0, headwindMps: 0 }, air).highM // 100
 */
export function playsLikeBandM(shot: Shot, conditions: Conditions): PlaysLikeBand {
  const likelyM = playsLikeM(shot, conditions, null);
  const answers = DISC_TYPES.flatMap((type) =>
    LAUNCHES.map((launch) => orNaN(() => playsLikeByLaunchM(shot, conditions, type, launch))),
  ).filter((answerM) => !Number.isNaN(answerM));
  return { lowM: Math.min(likelyM, ...answers), likelyM, highM: Math.max(likelyM, ...answers) };
}
