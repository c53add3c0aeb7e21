/** Picking a power for each disc, and an order of discs. */
import type { Candidate } from "./candidates";
import type { Criterion } from "./criteria";
import { bestFirst, bestOf, type Weighed } from "./nearSmooth";

/** A candidate at the power number `at`, chosen for its cost. */
export interface Pick extends Candidate, Weighed {
  readonly at: number;
}

/** Each candidate at its best power, best first; without those that have no finite cost. */
export function picksBy(candidates: readonly Candidate[], { costsOf, tie }: Criterion): Pick[] {
  const picks = candidates.flatMap((candidate): Pick[] => {
    const costAt = costsOf(candidate);
    const weighed = candidate.thrown.powers.map((power, at) => ({ power, cost: costAt(at) }));
    const at = bestOf(weighed, tie);
    return at < 0 ? [] : [{ ...candidate, ...weighed[at]!, at }];
  });
  return bestFirst(picks, tie);
}
