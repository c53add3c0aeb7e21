/** Which disc of the bag a name may mean. */
import { discKey } from "../log/discKey";
import type { BagDisc } from "../types";

/** Share of the letters that may differ. */
const MOST_DIFFERENT = 1 / 3;

/**
 * The one disc of the bag whose name has the written words in it, as "mint" for "Mint fairway", or
 * else the one that differs in the fewest letters, up to a third of them. null where none is near or
 * two are equally near. A suggestion only: nothing is renamed by it.
 *
 * @example
 * suggestDisc("coper mid", bag) // "Copper mid"
 */
export function suggestDisc(name: string, bag: readonly BagDisc[]): string | null {
  const key = discKey(name);
  const words = key.split(" ");
  const holding = bag.filter(({ disc }) => {
    const own = discKey(disc).split(" ");
    return words.every((word) => own.some((part) => part.startsWith(word)));
  });
  if (holding.length === 1) return holding[0]!.disc;
  const near = bag
    .map(({ disc }) => ({ disc, away: editDistance(key, discKey(disc)) }))
    .filter(({ disc, away }) => away <= MOST_DIFFERENT * Math.max(key.length, disc.length))
    .sort((one, other) => one.away - other.away);
  return near[0] && near[0].away !== near[1]?.away ? near[0].disc : null;
}

/**
 * Letters to insert, remove, replace or swap with their neighbour to make one word of another
 * (optimal string alignment; Damerau 1964, Commun. ACM 7:171).
 */
export function editDistance(one: string, other: string): number {
  const from = [...one];
  const to = [...other];
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      let least = Math.min(last[j]! + 1, next[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      if (swapped) least = Math.min(least, before[j - 2]! + 1);
      next.push(least);
    }
    [before, last] = [last, next];
  }
  return last[to.length]!;
}
