/** Where the throws of one disc stand on its dot plot. */
import { levelling } from "../../core/carry/levelThrows";
import { nextCarry, type NextCarry } from "../../core/carry/student";
import { conditionsOf } from "../../core/flight/air";
import { discKey, discKeys } from "../../core/log/names";
import type { Throw } from "../../core/types";
import { attempt } from "../attempt";
import type { Book } from "../book/book";
import { oncePer } from "../book/oncePer";
import { rowIn } from "../book/rowIn";

export interface Dot {
  readonly thrown: Throw;
  /** Level, calm, smooth carry. */
  readonly carryM: number;
}

const levellingOf = oncePer((book: Book) => levelling(conditionsOf(book.settings)));

const throwsByDisc = oncePer(({ log }: Book): ReadonlyMap<string, readonly Throw[]> => {
  const keyOf = discKeys();
  const groups = new Map<string, Throw[]>();
  for (const thrown of log.throws) {
    const key = keyOf(thrown.disc);
    const group = groups.get(key);
    if (group) group.push(thrown);
    else groups.set(key, [thrown]);
  }
  return groups;
});

/** More dots than this are a blur, and slow to draw. */
const MOST_DOTS = 100;

/** The latest counted throws of a disc, brought to level and calm, in the order of the log. */
export function dotsOf(book: Book, disc: string): Dot[] {
  const throws = throwsByDisc(book).get(discKey(disc)) ?? [];
  const type = rowIn(book, disc)?.type ?? null;
  return throws.slice(-MOST_DOTS).flatMap((thrown) => {
    const carry = attempt(() => levellingOf(book)(thrown, type));
    return carry.ok ? [{ thrown, carryM: carry.value }] : [];
  });
}

export const intervalOf = (book: Book, disc: string): NextCarry | null => {
  const row = rowIn(book, disc);
  return row && nextCarry(row);
};

/**
 * Heights of dots so that none hides another: each goes to the lowest level where its neighbours
 * leave room. Answers the level of each, 0 the lowest.
 */
export function stacked(xs: readonly number[], size: number): number[] {
  const order = xs.map((_, at) => at).sort((a, b) => xs[a]! - xs[b]!);
  const lastAt: number[] = [];
  const levels = xs.map(() => 0);
  for (const at of order) {
    const free = lastAt.findIndex((x) => xs[at]! - x >= size);
    const level = free >= 0 ? free : lastAt.length;
    lastAt[level] = xs[at]!;
    levels[at] = level;
  }
  return levels;
}
