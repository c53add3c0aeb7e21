/** The name that a mistyped one was meant to be. */
import { discKey } from "./names";

/** More slips than this make another name. */
const MOST_SLIPS = 2;
/** A short name bears fewer: one slip in so many letters. */
const LETTERS_PER_SLIP = 3;

/**
 * The one of `names` that differs from `name` by the fewest slips, at most two and fewer in a short
 * name; the first of equals; null where none is so near. Case and spaces count as in `discKey`.
 *
 * @example
 * nearestName("Coper mid", ["Mint fairway", "Copper mid"]) // "Copper mid"
 */
export function nearestName(name: string, names: Iterable<string>): string | null {
  const asked = [...discKey(name)];
  let fewest = Math.min(MOST_SLIPS, Math.floor(asked.length / LETTERS_PER_SLIP)) + 1;
  let nearest: string | null = null;
  for (const candidate of new Set(names)) {
    const letters = [...discKey(candidate)];
    if (Math.abs(letters.length - asked.length) >= fewest) continue;
    const slips = slipsBetween(asked, letters);
    if (slips >= fewest) continue;
    fewest = slips;
    nearest = candidate;
  }
  return nearest;
}

/**
 * The least number of letters put in, left out or mistyped that turn one text into the other: the
 * distance of Levenshtein, by the algorithm of Wagner and Fischer (Journal of the ACM 21, 1974).
 */
export function slipsBetween(one: readonly string[], other: readonly string[]): number {
  let above = Array.from({ length: other.length + 1 }, (_, index) => index);
  one.forEach((letter, row) => {
    const slips = [row + 1];
    other.forEach((otherLetter, column) => {
      const mistyped = above[column]! + (letter === otherLetter ? 0 : 1);
      slips.push(Math.min(mistyped, above[column + 1]! + 1, slips[column]! + 1));
    });
    above = slips;
  });
  return above[other.length]!;
}
