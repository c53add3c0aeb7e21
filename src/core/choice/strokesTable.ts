/** Expected strokes to hole out from every distance. */
import { LONGEST_HOLE_M } from "../constants";
import type { PuttingRow } from "../types";
import type { Landing } from "./landing";
import type { LevelTarget } from "./levelTarget";
import { meanOver } from "./meanOver";
import { putts } from "./putts";
import type { Target } from "./target";
import type { Throwable } from "./throwable";

/** The best throw from one distance. */
interface Choice {
  readonly landing: Landing;
  readonly target: Target;
}

const CLOSE_ENOUGH = 1e-6;
const MOST_ROUNDS = 50;

/**
 * The player's expected strokes V(d) to hole out from d = 0, 1, 2 … m, level and calm, with these
 * discs and putts: V = min(putts, 1 + least over discs and powers of E[V(distance left)]), and never
 * more than from farther out (assumption: a softer throw than the softest planned exists, and does no
 * worse from nearer). Howard's policy iteration: choose the best throw from each distance, then settle
 * the values that those choices have, until neither changes; to 1e-5 strokes. Without discs, putts
 * alone: Infinity beyond their reach.
 */
export function strokesTable(
  discs: readonly Throwable[],
  putting: readonly PuttingRow[],
  levelTarget: LevelTarget,
): Float64Array {
  const putt = Float64Array.from({ length: LONGEST_HOLE_M + 1 }, (_, d) => putts(d, putting));
  if (discs.length === 0) return putt;
  const table = firstGuess(putt, discs);
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = table.slice();
    const choices = chooseAll(table, putt, discs, levelTarget);
    settle(table, putt, choices);
    if (largestChange(before, table) < CLOSE_ENOUGH) break;
  }
  return table;
}

function firstGuess(putt: Float64Array, discs: readonly Throwable[]): Float64Array {
  const longestM = Math.exp(Math.max(...discs.map(({ row }) => row.mu)));
  return putt.map((value, d) => Math.min(value, 2 + d / longestM));
}

/** Improves the table from near to far, each distance once, and keeps the throw chosen from it. */
function chooseAll(
  table: Float64Array,
  putt: Float64Array,
  discs: readonly Throwable[],
  levelTarget: LevelTarget,
): (Choice | null)[] {
  const powerAt = discs.map(() => 0);
  const choices: (Choice | null)[] = [null];
  for (let d = 1; d < table.length; d++) {
    let least = Infinity;
    let choice: Choice | null = null;
    discs.forEach(({ row, landings }, disc) => {
      const target = levelTarget(row.type, d);
      const strokesAt = (power: number): number => meanOver(landings[power]!, target, table);
      const found = leastFrom(powerAt[disc]!, landings.length, strokesAt);
      powerAt[disc] = found.index;
      if (found.value < least) {
        least = found.value;
        choice = { landing: landings[found.index]!, target };
      }
    });
    table[d] = Math.min(putt[d]!, 1 + least);
    choices.push(choice);
  }
  return choices;
}

/** Walks downhill from an index to the nearest least value. */
function leastFrom(
  start: number,
  count: number,
  valueAt: (index: number) => number,
): { index: number; value: number } {
  let index = start;
  let value = valueAt(start);
  for (const step of [1, -1]) {
    for (let next = index + step; next >= 0 && next < count; next += step) {
      const nextValue = valueAt(next);
      if (!(nextValue < value)) break;
      index = next;
      value = nextValue;
    }
    if (index !== start) break;
  }
  return { index, value };
}

/** Brings the table to the values that fixed choices have. */
function settle(
  table: Float64Array,
  putt: Float64Array,
  choices: readonly (Choice | null)[],
): void {
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const before = table.slice();
    choices.forEach((choice, d) => {
      const thrown = choice ? 1 + meanOver(choice.landing, choice.target, table) : Infinity;
      table[d] = Math.min(putt[d]!, thrown);
    });
    neverMoreThanFartherOut(table);
    if (largestChange(before, table) < CLOSE_ENOUGH) return;
  }
}

function neverMoreThanFartherOut(table: Float64Array): void {
  for (let d = table.length - 2; d >= 0; d--) table[d] = Math.min(table[d]!, table[d + 1]!);
}

const largestChange = (before: Float64Array, after: Float64Array): number =>
  after.reduce((most, value, d) => Math.max(most, Math.abs(value - before[d]!)), 0);
