/** How well a bag covers a range of distances. */
import { unusable } from "../errors";
import { answerKey } from "../choice/answerKey";
import { bagInHand } from "../choice/bagInHand";
import { LONGEST_HOLE_M } from "../constants";
import { remember } from "../memory";
import { messages } from "../messages";
import type { Card, Settings } from "../types";
import { toMetres } from "../units";
import { coverOf, type Cover } from "./cover";

export type CoverageRow = Cover;

/** Distances to look at, m; what is not given follows from the bag. */
export interface Steps {
  readonly fromM?: number | null;
  readonly toM?: number | null;
  readonly stepM?: number | null;
}

/** Steps in the player's unit where none is given, and the most rows that are answered. */
const USUAL_STEP = { ft: 10, m: 3 } as const;
const MOST_ROWS = 1000;

const memory = remember<CoverageRow[]>(16);

/**
 * Coverage, level and calm: for each distance the best chance of the circle over the bag, the chance of
 * an ideal disc, and the disc. From the shortest disc to the longest, by 10 ft or 3 m and on whole
 * multiples of that, unless told otherwise. Throws `unusable` for steps that make no sense or more than
 * 1000 rows, `unavailable` where the bag is empty.
 *
 * @example
 * coverage(card, DEFAULT_SETTINGS, { fromM: 90, toM: 100, stepM: 5 }).length // 3
 */
export function coverage(card: Card, settings: Settings, steps: Steps = {}): CoverageRow[] {
  const rows = bagInHand(card);
  const [longestM, shortestM] = [Math.exp(rows[0]!.mu), Math.exp(rows.at(-1)!.mu)];
  const asked = distances(steps, shortestM, longestM, settings);
  return memory(answerKey(card, settings, asked), () => asked.map(coverOf(rows, card, settings)));
}

function distances(
  { fromM, toM, stepM }: Steps,
  shortestM: number,
  longestM: number,
  { distanceUnit }: Settings,
): number[] {
  const step = stepM ?? toMetres(USUAL_STEP[distanceUnit], distanceUnit);
  const from = fromM ?? step * Math.max(1, Math.floor(shortestM / step));
  const to = toM ?? step * Math.ceil(longestM / step);
  if (!(step > 0 && from > 0 && to >= from)) throw unusable(messages.bag.badSteps());
  if (to > LONGEST_HOLE_M || (to - from) / step >= MOST_ROWS)
    throw unusable(messages.bag.tooManySteps(MOST_ROWS, LONGEST_HOLE_M));
  // A hair more, so that rounding does not lose the last step.
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  return Array.from({ length: count }, (_, index) => from + index * step);
}
