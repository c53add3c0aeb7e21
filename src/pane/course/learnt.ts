import { learnFactors, type Factors } from "../../core/learn/learnFactors";
import { attempt, type Answer } from "../attempt";
import type { Book } from "../book/book";
import { oncePer } from "../book/oncePer";

export const learntOf = oncePer(({ rounds, card, settings }: Book): Answer<Factors> =>
  attempt(() => learnFactors(rounds, card, settings)),
);

/** Two decimals are all that Settings needs. */
export const rounded = (factor: number): number => Math.round(factor * 100) / 100;

/** Whether the learnt factors are the ones in use already. */
export const inUse = ({ uphill, wind }: Factors, { settings }: Book): boolean =>
  rounded(uphill.mean) === rounded(settings.uphillFactor) &&
  rounded(wind.mean) === rounded(settings.windFactor);
