/** The flight classes of the trade, and the words by which people write them. */
import { SOFTEST_POWER } from "../constants";
import type { DiscType } from "../types";
import { discKey } from "./discKey";

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
