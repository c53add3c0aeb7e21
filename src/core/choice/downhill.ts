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
