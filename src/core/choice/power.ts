/** How hard to throw one disc. */
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/conditions";
import { playsLikeM } from "../flight/playsLike";
import { messages } from "../messages";
import type { CardRow, Settings, Shot } from "../types";

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/**
 * The share of smooth at which the middle throw of a disc lands at the target: plays-like distance over
 * smooth carry. Throws `unavailable`, naming the share, where it is softer than its softest power or
 * harder than the highest; and where the flight has no answer.
 *
 * @example
 * powerFor({ distanceM: 90, riseM: 0, headwindMps: 0 }, row, settings) // 0.9 for a smooth carry of 100 m
 */
export function powerFor(shot: Shot, row: CardRow, settings: Settings): number {
  const needed = playsLikeM(shot, conditionsOf(settings), row.type) / Math.exp(row.mu);
  const { highestPower } = settings;
  const lowestPower = row.softest;
  if (needed < lowestPower)
    throw unavailable(messages.choice.tooSoft(row.disc, percent(needed), percent(lowestPower)));
  if (needed > highestPower)
    throw unavailable(messages.choice.tooFar(row.disc, percent(needed), percent(highestPower)));
  return needed;
}
