/** Picking a power for each disc, and an order of discs. */
import type { Candidate } from "./candidates";
import type { Criterion } from "./criteria";
import { leastOf } from "./downhill";
import { bestFirst, type Weighed } from "./nearSmooth";

/** A candidate at the power number `at`, chosen for its cost. */
export interface Pick extends Candidate, Weighed {
  readonly at: number;
}

/**
 * Each candidate at its best power, best first; without those that have no finite cost. The best power
 * is the one nearest smooth whose cost, and every cost on the way to it, is within the tie of the least.
 */
export function picksBy(candidates: readonly Candidate[], criterion: Criterion): Pick[] {
  const picks = candidates
    .map((candidate) => pickOf(candidate, criterion))
    .filter(({ cost }) => cost < Infinity);
  return bestFirst(picks, criterion.tie);
}

function pickOf(candidate: Candidate, { costsOf, tie }: Criterion): Pick {
  const { powers } = candidate.thrown;
  const costAt = costsOf(candidate);
  const least = leastOf(powers.length, costAt);
  let { index: at, cost } = least;
  const fromSmooth = (index: number): number => Math.abs(powers[index]! - 1);
  for (const step of [1, -1]) {
    for (let next = at + step; next >= 0 && next < powers.length; next += step) {
      if (!(fromSmooth(next) < fromSmooth(at))) break;
      const nextCost = costAt(next);
      if (!(nextCost < least.cost + tie)) break;
      at = next;
      cost = nextCost;
    }
  }
  return { ...candidate, at, power: powers[at]!, cost };
}
