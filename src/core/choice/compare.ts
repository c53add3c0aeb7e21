/** Which of two discs is better at a distance, and how sure that is. */
import { COMPARE_POINTS } from "../constants";
import { tQuantile } from "../carry/student";
import { rowOf } from "../carry/levelThrows";
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { messages } from "../messages";
import type { Card, CardRow, Settings } from "../types";
import { type Candidate, candidates, type Task, throwable } from "./bagInHand";
import { byStrokes, leastCost } from "./rank";
import { throwStrokes, gameOf } from "./strokes";

export interface Comparison {
  /** Expected strokes with each, at its best power. */
  readonly strokes: number;
  readonly otherStrokes: number;
  /** What the first saves; negative where the other is better. */
  readonly saves: number;
  /** Chance that the first is really the better one, its carry and the other's being known only so well. */
  readonly sure: number;
}

/**
 * Two discs on one shot: the difference of their expected strokes, and how sure it is that the first is
 * better. A disc's true middle lies about the card's as t_freedom(μ, scale/√evidence); each disc is thrown
 * as the card says, at points of equal chance of that middle, and all pairs are counted. Throws
 * `unavailable` for a disc that is not on the card or has no flight there.
 *
 * @example
 * compareDiscs("Copper mid", "Olive mid", { distanceM: 80, riseM: 0, headwindMps: 0 }, card, settings).sure
 */
export function compareDiscs(
  disc: string,
  other: string,
  task: Task,
  card: Card,
  settings: Settings,
): Comparison {
  const table = gameOf(card, settings).strokesFor(task.distanceM);
  const costsOf = (name: string) => {
    const row = rowOf(card, name);
    const [able] = candidates(
      { ...task, line: "" },
      [throwable(row, settings)],
      conditionsOf(settings),
    );
    return costs(able!, row, task, table, settings);
  };
  const [one, two] = [costsOf(disc), costsOf(other)];
  if (!(one.strokes < Infinity && two.strokes < Infinity))
    throw unavailable(messages.choice.onlyTrouble());
  return {
    strokes: one.strokes,
    otherStrokes: two.strokes,
    saves: two.strokes - one.strokes,
    sure: shareBelow(one.perhaps, two.perhaps),
  };
}

/** Least expected strokes, and what they come to where the disc's middle is another than the card's. */
function costs(
  candidate: Candidate,
  row: CardRow,
  task: Task,
  table: Float64Array,
  settings: Settings,
): { strokes: number; perhaps: number[] } {
  const { at, aimM, cost } = leastCost(candidate, byStrokes(task, table));
  const known = Number.isFinite(row.evidence) ? row.scale / Math.sqrt(row.evidence) : 0;
  const perhaps = Array.from({ length: COMPARE_POINTS }, (_, point) => {
    const off = known * tQuantile((point + 0.5) / COMPARE_POINTS, row.freedom);
    // Were the middle known, its doubt would not widen the next throw.
    const sure = throwable({ ...row, mu: row.mu + off, evidence: Infinity }, settings);
    return throwStrokes(sure, at, aimM, candidate.target, task, table);
  });
  return { strokes: cost, perhaps };
}

/** Share of all pairs in which the first is smaller, a tie counting half. */
function shareBelow(ones: readonly number[], others: readonly number[]): number {
  let below = 0;
  for (const one of ones)
    for (const other of others) below += one < other ? 1 : one === other ? 0.5 : 0;
  return below / (ones.length * others.length);
}
