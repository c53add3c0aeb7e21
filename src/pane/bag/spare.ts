/** Which discs the bag could do without, and what the others are worth on the course. */
import { twins, type Twins, worth, type Worth } from "../../core/bag/worth";
import { attempt, type Answer } from "../attempt";
import type { Book } from "../book/book";
import { oncePer } from "../book/oncePer";

export const twinsOf = oncePer(({ card, settings }: Book): Answer<readonly Twins[]> =>
  attempt(() => twins(card, settings)),
);

export const worthOf = oncePer(({ holes, card, settings }: Book): Answer<readonly Worth[]> =>
  attempt(() => worth(holes, card, settings)),
);

/** Less than this is shown as nothing. */
const LEAST_STROKES = 0.005;

export const isMissed = ({ strokes }: Worth): boolean => strokes >= LEAST_STROKES;

/** The length of a bar, as a share of the longest; of discs that are missed. */
export const barShare = ({ strokes }: Worth, missed: readonly Worth[]): number =>
  strokes / Math.max(...missed.map((other) => other.strokes));
