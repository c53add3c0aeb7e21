import { makeCard } from "../../core/carry/card";
import { learnFactors, type Factors } from "../../core/learn/learnFactors";
import { attempt, type Answer } from "../attempt";
import type { Book } from "../book/book";
import { oncePer } from "../book/oncePer";

export const learntOf = oncePer(({ rounds, card, settings }: Book): Answer<Factors> =>
  attempt(() => learnFactors(rounds, card, settings)),
);

/** Two decimals are all that Settings needs. */
const rounded = (factor: number): number => Math.round(factor * 100) / 100;

/** Factors that close to those in use are the same. */
const CLOSE = 0.01;

/** Whether the learnt factors are the ones in use already. */
export const inUse = ({ uphill, wind }: Factors, { settings }: Book): boolean =>
  Math.abs(uphill.mean - settings.uphillFactor) < CLOSE &&
  Math.abs(wind.mean - settings.headwindFactor) < CLOSE;

export interface FactorsToUse {
  readonly uphillFactor: number;
  readonly headwindFactor: number;
}

const MOST_ROUNDS = 6;

/**
 * What to write into the settings. Throws of the field are levelled by the factors too, so using them
 * moves the card a little, and that the factors: both are worked out in turn until they stay.
 */
export function factorsToUse(factors: Factors, { rounds, log, bag, settings }: Book): FactorsToUse {
  let learnt = factors;
  for (let round = 0; ; round++) {
    const use = {
      uphillFactor: rounded(learnt.uphill.mean),
      headwindFactor: rounded(learnt.wind.mean),
    };
    const used = { ...settings, ...use };
    learnt = learnFactors(rounds, makeCard(log, bag, used), used);
    const moved = Math.max(
      Math.abs(learnt.uphill.mean - use.uphillFactor),
      Math.abs(learnt.wind.mean - use.headwindFactor),
    );
    if (moved < CLOSE || round === MOST_ROUNDS) return use;
  }
}
