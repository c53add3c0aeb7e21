/** From throws to the card. */
import type { BagDisc, Card, Settings, ThrowLog } from "../types";
import { CardMaker } from "./cardMaker";

/**
 * The card of a log: for each disc with a throw that counts, the centre of ln carry, its moderated
 * spread, and what is known sideways; longest first. Older throws count less, by their age before
 * the setting As of or else before the newest throw in the log, never before today; throws newer
 * than As of count fully. The bag, where given, tells type, line and whether a disc is in it; a disc
 * that it does not list is taken to be in it. No throws give a card without rows, and the usual
 * spread for the population. Linear in throws.
 *
 * @example
 * makeCard(readThrows(cells, settings), [], settings).rows[0]?.disc // the longest
 */
export function makeCard(log: ThrowLog, bag: readonly BagDisc[] | null, settings: Settings): Card {
  const maker = new CardMaker(bag ?? [], settings);
  for (const thrown of log.throws) maker.take(thrown);
  for (const row of log.leftOut) maker.leave(row);
  return maker.card();
}
