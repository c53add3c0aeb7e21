/** Expected strokes from a distance. */
import { LONGEST_HOLE_M } from "../constants";
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Card, Settings } from "../types";
import { gameOf } from "./game";

/**
 * The player's expected strokes to hole out from `distanceM`, level and calm, above 0 and up to 500 m;
 * putting included. Linear between whole metres. Good to about 0.005. Throws `unusable` outside that
 * range, `unavailable` where the bag is empty.
 */
export function strokesToHoleOut(distanceM: number, card: Card, settings: Settings): number {
  if (!(distanceM >= 0 && distanceM <= LONGEST_HOLE_M))
    throw unusable(messages.choice.tooLong(LONGEST_HOLE_M));
  const { strokes } = gameOf(card, settings);
  const metre = Math.min(Math.floor(distanceM), LONGEST_HOLE_M - 1);
  return strokes[metre]! + (distanceM - metre) * (strokes[metre + 1]! - strokes[metre]!);
}
