/** An order in which near-equals go to the throw nearest smooth. */

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
