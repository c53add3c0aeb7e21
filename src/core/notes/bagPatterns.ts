/** Finding the discs of the bag in a line of notes. */
import type { BagDisc } from "../types";

export interface BagPattern {
  readonly disc: BagDisc;
  /** Sticky: matches at its lastIndex only. */
  readonly pattern: RegExp;
}

/**
 * One pattern a disc, in any case and spacing, longest name first so that "Copper mid 2" goes before
 * "Copper mid". A name without a letter would swallow carries and has none.
 */
export const bagPatterns = (bag: readonly BagDisc[]): BagPattern[] =>
  bag
    .filter(({ disc }) => /\p{L}/u.test(disc))
    .sort((one, other) => other.disc.length - one.disc.length)
    .map((disc) => {
      const words = disc.disc.normalize("NFKC").trim().split(/\s+/).map(literally);
      return { disc, pattern: new RegExp(`${words.join("\\s+")}(?![\\p{L}\\p{N}])`, "iuy") };
    });

const literally = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/g, "\\$&");
