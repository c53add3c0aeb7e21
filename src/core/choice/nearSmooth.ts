/** Choosing where near-equals go to the throw nearest smooth. */

/** Something that can be chosen: the lower its cost, the better. */
export interface Weighed {
  readonly power: number;
  readonly cost: number;
}

/**
 * The index of the best: among those that cost less than `tie` above the least, the power nearest 1,
 * then the lower cost, then the earlier. −1 where nothing has a finite cost.
 *
 * @example
 * bestOf([{ power: 0.9, cost: 2.3 }, { power: 1, cost: 2.304 }], 0.005) // 1
 */
export function bestOf(weighed: readonly Weighed[], tie: number): number {
  const limit = weighed.reduce((least, { cost }) => Math.min(least, cost), Infinity) + tie;
  let best = -1;
  weighed.forEach((candidate, index) => {
    if (!(candidate.cost < limit)) return;
    if (best < 0 || isBetter(candidate, weighed[best]!)) best = index;
  });
  return best;
}

function isBetter(one: Weighed, other: Weighed): boolean {
  const nearer = Math.abs(other.power - 1) - Math.abs(one.power - 1);
  // Powers differ by hundredths: anything closer is rounding.
  return Math.abs(nearer) > 1e-9 ? nearer > 0 : one.cost < other.cost;
}

/** All that have a finite cost, best first: the best, then the best of the rest, and so on. */
export function bestFirst<Item extends Weighed>(items: readonly Item[], tie: number): Item[] {
  const left = [...items];
  const ranked: Item[] = [];
  for (let best = bestOf(left, tie); best >= 0; best = bestOf(left, tie)) {
    ranked.push(...left.splice(best, 1));
  }
  return ranked;
}
