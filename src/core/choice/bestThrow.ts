/** The throw that takes least strokes from one distance. */
import { downhill, leastOf } from "./downhill";
import type { Landing } from "./landing";
import type { LevelTarget } from "./levelTarget";
import { meanOver } from "./meanOver";
import type { Target } from "./target";
import type { Throwable } from "./throwable";

/** What the coarse look may be wrong by, twice over. */
const COARSE_DOUBT = 0.1;

export interface BestThrow {
  readonly thrown: Throwable;
  readonly landing: Landing;
  readonly target: Target;
}

/**
 * The search for one bag: a coarse look at every disc, a fine one at those that may be the best. At
 * least one disc.
 */
export function bestThrowFinder(
  discs: readonly Throwable[],
  levelTarget: LevelTarget,
): (distanceM: number, table: Float64Array) => BestThrow {
  return (distanceM, table) => {
    const looks = discs.map((thrown) => {
      const target = levelTarget(thrown.row.type, distanceM);
      const costAt = (landings: readonly Landing[]) => (at: number) =>
        meanOver(landings[at]!, target, table);
      const coarse = leastOf(thrown.landings.length, costAt(thrown.coarseLandings));
      return { thrown, target, coarse, costAt: costAt(thrown.landings) };
    });
    const limit = Math.min(...looks.map(({ coarse }) => coarse.cost)) + COARSE_DOUBT;
    return looks
      .filter(({ coarse }) => coarse.cost <= limit)
      .map(({ thrown, target, coarse, costAt }) => {
        const { index, cost } = downhill(coarse.index, thrown.landings.length, costAt);
        return { thrown, target, landing: thrown.landings[index]!, cost };
      })
      .reduce((best, other) => (other.cost < best.cost ? other : best));
  };
}
