/** A player's game: the discs in the bag, ready to be thrown, and the strokes that they take. */
import { conditionsOf } from "../flight/conditions";
import { remember } from "../memory";
import type { Card, CardRow, Settings } from "../types";
import { bagInHand } from "./bagInHand";
import { levelTargets } from "./levelTarget";
import { powersOf } from "./powers";
import { strokesTable } from "./strokesTable";
import { throwable, type Throwable } from "./throwable";

export interface Game {
  /** Longest first. */
  readonly discs: readonly Throwable[];
  /** Expected strokes to hole out from 0, 1, 2 … m. */
  readonly strokes: Float64Array;
}

const memory = remember<Game>(32);

/**
 * The game of a card under some settings, worked out once for the same content. Throws `unavailable`
 * where the bag is empty.
 */
export const gameOf = (card: Card, settings: Settings): Game =>
  gameOfRows(bagInHand(card), settings);

export function gameOfRows(rows: readonly CardRow[], settings: Settings): Game {
  const { putting, lowestPower, highestPower } = settings;
  const conditions = conditionsOf(settings);
  const key = JSON.stringify([rows, putting, lowestPower, highestPower, conditions]);
  return memory(key, () => {
    const powers = powersOf(settings);
    const discs = rows.map((row) => throwable(row, powers));
    return { discs, strokes: strokesTable(discs, putting, levelTargets(conditions)) };
  });
}
