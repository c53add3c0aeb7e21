/** The card behind whatever a player gives for `throws`. */
import { passThrows } from "../log/readThrows";
import { throwsShape } from "../log/throwColumns";
import { discKey } from "../log/discKey";
import { softestPower } from "../log/discTypes";
import type { BagDisc, Card, Cells, Settings } from "../types";
import { CardMaker } from "./cardMaker";
import { readCardCells } from "./readCardCells";

/**
 * The card of a throw log with headers, of a bare list of disc and carry, or of a printed or hand-made
 * card (recognised by a header that only a card has: Low, High, Spread or Known to). The bag, where
 * given, tells type, line and what stays at home; a card that comes with its own keeps those of discs
 * that the bag does not list. See `readThrows`, `makeCard` and `readCardCells` for what each reads.
 *
 * @example
 * readCard([["Copper mid", 301], ["Mint fairway", 352]], null, DEFAULT_SETTINGS).rows.length // 2
 */
export function readCard(cells: Cells, bag: readonly BagDisc[] | null, settings: Settings): Card {
  if (throwsShape(cells) !== "card") {
    const maker = new CardMaker(bag ?? [], settings);
    passThrows(cells, settings, maker);
    return maker.card();
  }
  const card = readCardCells(cells, settings);
  return bag ? withBag(card, bag) : card;
}

function withBag(card: Card, bag: readonly BagDisc[]): Card {
  const listed = new Map(bag.map((disc) => [discKey(disc.disc), disc]));
  const rows = card.rows.map((row) => {
    const known = listed.get(discKey(row.disc));
    if (!known) return row;
    const { type, line, inBag } = known;
    return { ...row, type, line, inBag, softest: softestPower(type, known.softest) };
  });
  return { ...card, rows };
}
