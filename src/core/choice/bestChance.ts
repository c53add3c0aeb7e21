/** One disc, at whatever power serves best. */
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/conditions";
import { messages } from "../messages";
import type { CardRow, Settings, Shot } from "../types";
import { chanceOf } from "./chance";
import { powersOf } from "./powers";
import { targetsOf } from "./target";

/**
 * The greatest chance that a disc finishes in the circle, over its powers; from 0 to 1.
 * Throws `unavailable` where the flight has no answer.
 */
export function bestChance(shot: Shot, row: CardRow, settings: Settings): number {
  const target = targetsOf(shot, conditionsOf(settings))(row.type);
  if (!target) throw unavailable(messages.flight.outOfReach());
  const chance = chanceOf(row, target, settings.circleM);
  return Math.max(...powersOf(row, settings).map(chance));
}
