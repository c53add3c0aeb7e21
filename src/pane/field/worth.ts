/** How well each disc is known, and which is most worth throwing next. */
import { knownToM, neededThrows } from "../../core/carry/needed";
import { attempt } from "../attempt";
import type { Book } from "../book/book";
import { rowIn } from "../book/rowIn";

/** Least first: a disc never thrown, then the one that one more throw sharpens most. */
export function leastKnownFirst(book: Book): (disc: string) => number {
  return (disc) => {
    const row = rowIn(book, disc);
    return row ? knownToM(row, 1) - knownToM(row) : -Infinity;
  };
}

/** Throws still needed to know the disc to ± the margin; null where that cannot be told yet. */
export function stillNeeded(book: Book, disc: string, marginM: number): number | null {
  const row = rowIn(book, disc);
  const needed = row && attempt(() => neededThrows(row, marginM));
  return needed?.ok ? needed.value : null;
}
