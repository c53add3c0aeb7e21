/** Expected strokes from a distance. */
import { LONGEST_HOLE_M } from "../constants";
import { unavailable, unusable } from "../errors";
import { messages } from "../messages";
import type { Card, Settings } from "../types";
import { gameOf } from "./game";

/**
 * The player's expected strokes to hole out from `distanceM`, 0 to 500 m, level and calm, putting
 * included; see `nearTable` for how. Linear between whole metres, good to about 0.005. Throws
 * `unusable` for what is no distance, `unavailable` beyond 500 m and where the bag is empty.
 */
export function strokesToHoleOut(distanceM: number, card: Card, settings: Settings): number {
  if (!(distanceM >= 0)) throw unusable(messages.flight.badDistance());
  if (distanceM > LONGEST_HOLE_M) throw unavailable(messages.choice.tooLong(LONGEST_HOLE_M));
  const table = gameOf(card, settings).strokesFor(distanceM);
  const metre = Math.min(Math.floor(distanceM), table.length - 2);
  return table[metre]! + (distanceM - metre) * (table[metre + 1]! - table[metre]!);
}
