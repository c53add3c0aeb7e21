/** Expected strokes to hole out with a throw now. */
import { FINE, landing } from "./landing";
import { meanOver } from "./meanOver";
import type { Target } from "./target";
import type { Throwable } from "./throwable";
import { safeCarries, type Trouble } from "./trouble";

/**
 * Expected strokes with one disc at its power number `at`, this throw included: 1 + E[V(distance
 * left)], V being `table`. A landing in trouble costs one throw more and is replayed from the same spot
 * (PDGA Official Rules of Disc Golf, 806.02, previous lie): with q the chance of that,
 * S = 1 + q(1 + S) + E[V; safe]. Infinity where no throw stays out of trouble.
 */
export function throwStrokes(
  { row, powers, landings }: Throwable,
  at: number,
  target: Target,
  trouble: Trouble,
  table: Float64Array,
): number {
  if (!trouble.longTroubleM && !trouble.shortTroubleM)
    return 1 + meanOver(landings[at]!, target, table);
  const safe = landing(row, powers[at]!, FINE, safeCarries(trouble, target));
  const safeShare = Math.min(
    1,
    safe.carryWeights.reduce((sum, weight) => sum + weight, 0),
  );
  return (2 - safeShare + meanOver(safe, target, table)) / safeShare;
}
