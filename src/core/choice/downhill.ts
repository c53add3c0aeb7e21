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
