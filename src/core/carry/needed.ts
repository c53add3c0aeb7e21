/** How many more throws until a disc is known well enough. */
import { UPPER_TENTH } from "../constants";
import { unavailable, unusable } from "../errors";
import { messages } from "../messages";
import type { CardRow } from "../types";
import { tQuantile } from "./student";

/** Beyond so many throws the answer is of no use to anyone. */
const MOST_THROWS = 1e6;

/**
 * Half width of the 80 % interval for the smooth carry of a disc, m, after `more` throws of the same
 * spread: what "known to ±" means on the card, for `more` = 0.
 */
export const knownToM = ({ mu, scale, freedom, evidence }: CardRow, more = 0): number =>
  (Math.exp(mu) * tQuantile(UPPER_TENTH, freedom + more) * scale) / Math.sqrt(evidence + more);

/**
 * Smooth throws still needed until the carry is known to ± `marginM`; 0 where it is already. Every
 * throw adds one to the evidence and to the freedom, at the spread known now. A margin that is not
 * above 0 throws an `unusable` error; one that a million throws do not reach, an `unavailable` one.
 *
 * @example
 * neededThrows(rowOf(card, "Copper mid"), toMetres(8, "ft")) // 4
 */
export function neededThrows(row: CardRow, marginM: number): number {
  if (!(marginM > 0)) throw unusable(messages.carry.marginNotPositive(marginM));
  const known = (more: number): boolean => knownToM(row, more) <= marginM;
  if (known(0)) return 0;
  let enough = 1;
  while (!known(enough)) {
    enough *= 2;
    if (enough > MOST_THROWS) throw unavailable(messages.carry.neverKnown());
  }
  let tooFew = enough >> 1;
  while (enough - tooFew > 1) {
    const middle = (tooFew + enough) >> 1;
    if (known(middle)) enough = middle;
    else tooFew = middle;
  }
  return enough;
}
