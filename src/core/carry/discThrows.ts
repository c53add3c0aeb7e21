/** The throws of a log, disc by disc. */
import { discKeys } from "../log/discKey";
import type { BagDisc, LeftOut, Throw, ThrowLog } from "../types";

export interface DiscThrows {
  /** As the bag spells it, else as it stands first in the log. */
  readonly disc: string;
  readonly bag: BagDisc | null;
  readonly throws: readonly Throw[];
  readonly leftOut: readonly LeftOut[];
}

/** Groups by name without regard to case and spaces; in order of first throw. One pass, linear. */
export function discThrows(log: ThrowLog, bag: readonly BagDisc[]): DiscThrows[] {
  const keyOf = discKeys();
  const throws = groups(log.throws, keyOf);
  const leftOut = groups(log.leftOut, keyOf);
  const bagDiscs = new Map(bag.map((disc) => [keyOf(disc.disc), disc]));
  return Array.from(throws, ([key, own]) => {
    const listed = bagDiscs.get(key) ?? null;
    const disc = listed?.disc ?? own[0]!.disc.replace(/\s+/g, " ");
    return { disc, bag: listed, throws: own, leftOut: leftOut.get(key) ?? [] };
  });
}

function groups<Item extends { readonly disc: string }>(
  items: readonly Item[],
  keyOf: (name: string) => string,
): Map<string, Item[]> {
  const byKey = new Map<string, Item[]>();
  for (const item of items) {
    const key = keyOf(item.disc);
    const group = byKey.get(key);
    if (group) group.push(item);
    else byKey.set(key, [item]);
  }
  return byKey;
}
