/** How hard to throw one disc. */
import { POWER_STEP } from "../constants";
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { playsLikeM } from "../flight/playsLike";
import { kindOf } from "../flight/polar";
import { messages } from "../messages";
import type { CardRow, Settings, Shot } from "../types";
import { courseForm } from "./courseForm";
import type { Target } from "./target";

const percent = (share: number): string => `${Math.round(share * 100)} %`;

/**
 * The share of smooth at which the middle throw of a disc lands at the target: plays-like distance over
 * its smooth carry on the course. Throws `unavailable`, naming the share, where it is softer than its softest power or
 * harder than the highest; and where the flight has no answer.
 *
 * @example
 * powerFor({ distanceM: 90, riseM: 0, headwindMps: 0 }, row, settings) // 0.9 for a smooth carry of 100 m
 */
export function powerFor(shot: Shot, row: CardRow, settings: Settings): number {
  const needed =
    playsLikeM(shot, conditionsOf(settings), kindOf(row)) / Math.exp(courseForm(row, settings).mu);
  const { highestPower } = settings;
  const lowestPower = row.softest;
  if (needed < lowestPower)
    throw unavailable(messages.choice.tooSoft(row.disc, percent(needed), percent(lowestPower)));
  if (needed > highestPower)
    throw unavailable(messages.choice.tooFar(row.disc, percent(needed), percent(highestPower)));
  return needed;
}

// The powers that a throw may be planned at.

/**
 * From the softest power of a disc to the highest of the settings by hundredths, both ends included,
 * softest first. Only the highest where the softest is no lower.
 *
 * @example
 * powersOf({ softest: 0.98 }, { highestPower: 1 }) // [0.98, 0.99, 1]
 */
export function powersOf(
  { softest }: Pick<CardRow, "softest">,
  { highestPower }: Pick<Settings, "highestPower">,
): number[] {
  const lowest = Math.min(softest, highestPower);
  const steps = Math.floor((highestPower - lowest) / POWER_STEP + 1e-9);
  const powers = Array.from({ length: steps + 1 }, (_, step) =>
    // Adding hundredths drifts in the last digit; 0.94 must come out as the number that is typed.
    Number((lowest + step * POWER_STEP).toFixed(6)),
  );
  if (powers[steps]! < highestPower - 1e-9) powers.push(highestPower);
  return powers;
}

/** The index of the hardest power at which the middle throw does not pass the target, else of the softest. */
export function powerThatReaches(
  { mu }: Pick<CardRow, "mu">,
  powers: readonly number[],
  { playsLikeM }: Target,
): number {
  const needed = playsLikeM / Math.exp(mu);
  const harder = powers.findIndex((power) => power > needed);
  return harder < 0 ? powers.length - 1 : Math.max(0, harder - 1);
}

// An order in which near-equals go to the throw nearest smooth.

/** Something that can be chosen: the lower its cost, the better. */
export interface Weighed {
  readonly power: number;
  readonly cost: number;
}

/**
 * All items, best first: the best, then the best of the rest, and so on. The best is, among those that
 * cost less than `tie` above the least, the one with the power nearest 1, then the cheaper, then the
 * earlier. Costs are finite.
 *
 * @example
 * bestFirst([{ power: 0.9, cost: 2.3 }, { power: 1, cost: 2.304 }], 0.005)[0]?.power // 1
 */
export function bestFirst<Item extends Weighed>(items: readonly Item[], tie: number): Item[] {
  const left = [...items];
  const ranked: Item[] = [];
  while (left.length > 0) {
    const limit = Math.min(...left.map(({ cost }) => cost)) + tie;
    const best = left.reduce((found, item) => (isBetter(item, found, limit) ? item : found));
    ranked.push(best);
    left.splice(left.indexOf(best), 1);
  }
  return ranked;
}

function isBetter(one: Weighed, other: Weighed, limit: number): boolean {
  if (!(one.cost < limit && other.cost < limit)) return one.cost < other.cost;
  const nearer = Math.abs(other.power - 1) - Math.abs(one.power - 1);
  // Powers differ by hundredths: anything closer is rounding.
  return Math.abs(nearer) > 1e-9 ? nearer > 0 : one.cost < other.cost;
}

export interface Found {
  readonly index: number;
  readonly cost: number;
}

/**
 * The index with the least cost that walking downhill from `start` comes to, between 0 and `count` − 1.
 * For costs that fall and then rise, as those of neighbouring powers do, it is the least of all.
 *
 * @example
 * downhill(0, 5, (index) => (index - 3) ** 2) // { index: 3, cost: 0 }
 */
export function downhill(start: number, count: number, costAt: (index: number) => number): Found {
  let best: Found = { index: start, cost: costAt(start) };
  for (const step of [1, -1]) {
    for (let index = best.index + step; index >= 0 && index < count; index += step) {
      const cost = costAt(index);
      if (!(cost < best.cost)) break;
      best = { index, cost };
    }
    if (best.index !== start) break;
  }
  return best;
}

/** Neighbouring powers differ so little that every fourth shows where the valleys are. */
const STRIDE = 4;

/**
 * The index with the least cost where there may be more than one valley: a look at every fourth index
 * and the last, then downhill from the best of them.
 */
export function leastOf(count: number, costAt: (index: number) => number): Found {
  let start = count - 1;
  let least = costAt(start);
  for (let index = 0; index < count - 1; index += STRIDE) {
    const cost = costAt(index);
    if (cost < least) [start, least] = [index, cost];
  }
  return downhill(start, count, costAt);
}
