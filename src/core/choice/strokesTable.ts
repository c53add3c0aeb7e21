/** Expected strokes to hole out from every distance. */
import { LONGEST_HOLE_M } from "../constants";
import type { PuttingRow } from "../types";
import { bestThrowFinder, type BestThrow } from "./bestThrow";
import type { LevelTarget } from "./levelTarget";
import { meanOver } from "./meanOver";
import { putts } from "./putts";
import type { Throwable } from "./throwable";

/** Values that choices were made by may be off by this, strokes; what the choices then lose is less. */
const WELL_CHOSEN = 1e-4;
const CLOSE_ENOUGH = 1e-5;
const MOST_ROUNDS = 50;

/** From farther than this many longest carries a throw never ends farther out than it began. */
const NEAR_CARRIES = 1.5;

/**
 * The player's expected strokes V(d) to hole out from d = 0, 1, 2 … m, level and calm, with these
 * discs and putts: V = min(putts, 1 + least over discs and powers of E[V(distance left)]), and never
 * more than from farther out (assumption: a softer throw than the softest planned exists, and does no
 * worse from nearer). At least one disc.
 *
 * Howard's policy iteration: choose the best throw from each distance, then settle the values that
 * those choices have, until these are the values that were chosen by. Nearly every throw ends nearer
 * than it began, so going from near to far one round is mostly enough. `start` may be the table of a
 * like bag, to begin with. The table reaches one and a half longest carries out.
 */
export function nearTable(
  discs: readonly Throwable[],
  putting: readonly PuttingRow[],
  levelTarget: LevelTarget,
  start?: Float64Array,
): { table: Float64Array; choices: (BestThrow | null)[] } {
  const longestM = Math.exp(Math.max(...discs.map(({ row }) => row.mu)));
  const reachM = Math.min(LONGEST_HOLE_M, Math.ceil(NEAR_CARRIES * longestM));
  const putt = puttsByMetre(reachM, putting);
  const table = putt.map((value, d) => Math.min(value, start?.[d] ?? 2 + d / longestM));
  for (let round = 0; ; round++) {
    const choices = chooseAll(table, putt, bestThrowFinder(discs, levelTarget));
    const chosenBy = table.slice();
    settle(table, putt, choices);
    if (round === MOST_ROUNDS || largestChange(chosenBy, table) < WELL_CHOSEN)
      return { table, choices };
  }
}

/** The same out to the longest hole: from beyond the near table one look at each distance is enough. */
export function fullTable(
  near: Float64Array,
  discs: readonly Throwable[],
  levelTarget: LevelTarget,
): Float64Array {
  const table = new Float64Array(LONGEST_HOLE_M + 1).fill(near.at(-1)!);
  table.set(near);
  const bestThrow = bestThrowFinder(discs, levelTarget);
  for (let d = near.length; d < table.length; d++) {
    table[d] = Math.max(table[d - 1]!, 1 + bestThrow(d, table).after);
  }
  return table;
}

const puttsByMetre = (reachM: number, putting: readonly PuttingRow[]): Float64Array =>
  Float64Array.from({ length: reachM + 1 }, (_, d) => putts(d, putting));

/** Improves the table from near to far, and keeps the throw chosen from each distance; null for a putt. */
function chooseAll(
  table: Float64Array,
  putt: Float64Array,
  bestThrow: ReturnType<typeof bestThrowFinder>,
): (BestThrow | null)[] {
  const choices = Array.from(table, (_, d) => {
    // A throw and the putt after it take two at least.
    if (putt[d]! <= 2) return null;
    const best = bestThrow(d, table);
    table[d] = 1 + best.after;
    return best;
  });
  noMoreThanFartherOut(table);
  return choices;
}

/** Brings the table to the values that fixed choices have. */
function settle(
  table: Float64Array,
  putt: Float64Array,
  choices: readonly (BestThrow | null)[],
): void {
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = table.slice();
    choices.forEach((best, d) => {
      table[d] = best ? 1 + meanOver(best.landing, best.target, table) : putt[d]!;
    });
    noMoreThanFartherOut(table);
    if (largestChange(before, table) < CLOSE_ENOUGH) return;
  }
}

function noMoreThanFartherOut(table: Float64Array): void {
  for (let d = table.length - 2; d >= 0; d--) table[d] = Math.min(table[d]!, table[d + 1]!);
}

const largestChange = (before: Float64Array, after: Float64Array): number =>
  after.reduce((most, value, d) => Math.max(most, Math.abs(value - before[d]!)), 0);
