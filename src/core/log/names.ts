/** The flight classes of the trade, and the words by which people write them. */
import { SOFTEST_POWER } from "../constants";
import type { DiscType } from "../types";

/**
 * What two spellings of a disc's name have in common: letters alike in any script (compatibility
 * forms such as full-width letters included, by Unicode NFKC), lower case without regard to the
 * machine's language, no outer spaces, repeated inner spaces as one. Text in, text out; blank gives "".
 *
 * @example
 * discKey("  Copper   MID ") // "copper mid"
 */
export const discKey = (name: string): string =>
  name.normalize("NFKC").toLowerCase().trim().replace(/\s+/g, " ");

/** A `discKey` that remembers the spellings it has met: a log repeats a few names many times. */
export function discKeys(): (name: string) => string {
  const known = new Map<string, string>();
  return (name) => {
    let key = known.get(name);
    if (key === undefined) known.set(name, (key = discKey(name)));
    return key;
  };
}

const TYPE_WORDS: ReadonlyMap<string, DiscType> = new Map([
  ["putter", "putter"],
  ["approach", "putter"],
  ["midrange", "midrange"],
  ["mid-range", "midrange"],
  ["mid", "midrange"],
  ["fairway", "fairway"],
  ["fairway driver", "fairway"],
  ["distance", "distance"],
  ["distance driver", "distance"],
  ["driver", "distance"],
]);

/** The type that a word means, in any case; null for a blank and for any other text. */
export const discType = (word: string): DiscType | null => TYPE_WORDS.get(discKey(word)) ?? null;

/** The softest throw considered with a disc, as a share of smooth: what the bag says, else the usual for its type. */
export const softestPower = (type: DiscType | null, own: number | null): number =>
  own ?? SOFTEST_POWER[type ?? "unknown"];

/**
 * The words in the column Line by which a player marks a throw that should not count: ours is
 * "off"; the others are what people write for it. Any other line counts.
 */
const OFF_WORDS: ReadonlySet<string> = new Set(["off", "off line", "off-line", "bad", "x", "?"]);

/** What the product itself writes into Line to mark a throw off. */
export const OFF = "off";

/** Whether a line, as `discKey` writes it, means that the throw does not count. */
export const isOff = (lineKey: string): boolean => OFF_WORDS.has(lineKey);
