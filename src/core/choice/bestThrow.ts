/** The throw that takes least strokes from one distance. */
import { downhill, type Found } from "./downhill";
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
  /** Expected strokes after the throw. */
  readonly after: number;
}

/**
 * A search that remembers at which power each disc was best last time, so that it does little work when
 * asked for one distance after another. A coarse look at every disc, a fine one at those that may be
 * the best. At least one disc.
 */
export function bestThrowFinder(
  discs: readonly Throwable[],
  levelTarget: LevelTarget,
): (distanceM: number, table: Float64Array) => BestThrow {
  let powerAt = discs.map(() => 0);
  return (distanceM, table) => {
    const targets = discs.map(({ row }) => levelTarget(row.type, distanceM));
    const search = (disc: number, start: number, landings: readonly Landing[]): Found =>
      downhill(start, landings.length, (at) => meanOver(landings[at]!, targets[disc]!, table));
    const coarse = discs.map(({ coarseLandings }, disc) =>
      search(disc, powerAt[disc]!, coarseLandings),
    );
    powerAt = coarse.map(({ index }) => index);
    const limit = Math.min(...coarse.map(({ cost }) => cost)) + COARSE_DOUBT;
    let best: BestThrow | null = null;
    coarse.forEach(({ index, cost }, disc) => {
      if (cost > limit) return;
      const { landings } = discs[disc]!;
      const found = search(disc, index, landings);
      if (best && found.cost >= best.after) return;
      best = {
        thrown: discs[disc]!,
        landing: landings[found.index]!,
        target: targets[disc]!,
        after: found.cost,
      };
    });
    return best!;
  };
}
