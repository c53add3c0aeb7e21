/** Expected strokes to hole out from every distance. */
import type { PuttingRow } from "../types";
import { bestThrowFinder, type BestThrow } from "./bestThrow";
import type { LevelTarget } from "./levelTarget";
import { meanOver } from "./meanOver";
import { putts } from "./putts";
import type { Throwable } from "./throwable";

export interface StrokesTable {
  /** Expected strokes from 0, 1, 2 … m. */
  readonly strokes: Float64Array;
  /** The throw that each distance is played with; null for a putt. */
  readonly choices: readonly (BestThrow | null)[];
}

/** Values that choices were made by may be off by this, strokes; what the choices then lose is less. */
const WELL_CHOSEN = 1e-4;
const CLOSE_ENOUGH = 1e-5;
/** Choosing settles in a few rounds; a bag that often throws far past the target would take its time. */
const MOST_CHOOSING_ROUNDS = 8;
const MOST_SETTLING_ROUNDS = 50;

/**
 * The player's expected strokes V(d) to hole out from d = 0, 1, 2 … `reachM`, level and calm, with these
 * discs and putts: V = min(putts, 1 + least over discs and powers of E[V(distance left)]), and never
 * more than from farther out (assumption: a softer throw than the softest planned exists, and does no
 * worse from nearer). At least one disc. From the last longest carry before `reachM` the values are a
 * little too high, since what is farther out is not known there.
 *
 * Howard's policy iteration: choose the best throw from each distance, then settle the values that
 * those choices have, until these are the values that were chosen by. Nearly every throw ends nearer
 * than it began, so going from near to far a round or two is enough. Of `like`, the table of a bag with
 * a few discs more or of a shorter reach, the throws that are still there are kept and only the others
 * chosen, in one round: too high by what choosing all again would gain, below 0.001 strokes.
 */
export function strokesTable(
  discs: readonly Throwable[],
  putting: readonly PuttingRow[],
  levelTarget: LevelTarget,
  reachM: number,
  like?: StrokesTable,
): StrokesTable {
  const longestM = Math.exp(Math.max(...discs.map(({ row }) => row.mu)));
  const putt = Float64Array.from({ length: reachM + 1 }, (_, d) => putts(d, putting));
  const strokes = putt.map((value, d) => Math.min(value, like?.strokes[d] ?? 2 + d / longestM));
  const bestThrow = bestThrowFinder(discs, levelTarget);
  const valueOf = (choice: BestThrow | null, d: number): number =>
    choice ? 1 + meanOver(choice.landing, choice.target, strokes) : putt[d]!;
  for (let round = 0; ; round++) {
    const choices: (BestThrow | null)[] = [];
    goOut(strokes, (d) => {
      // A throw and the putt after it take two at least.
      const kept = like?.choices[d];
      const mayKeep = kept && discs.includes(kept.thrown);
      const choice = putt[d]! <= 2 ? null : mayKeep ? kept : bestThrow(d, strokes);
      choices.push(choice);
      return valueOf(choice, d);
    });
    const chosenBy = strokes.slice();
    settle(strokes, (d) => valueOf(choices[d]!, d));
    if (like || round === MOST_CHOOSING_ROUNDS || largestChange(chosenBy, strokes) < WELL_CHOSEN)
      return { strokes, choices };
  }
}

/** Works the strokes out again and again until they do not change. */
function settle(strokes: Float64Array, valueAt: (d: number) => number): void {
  for (let round = 0; round < MOST_SETTLING_ROUNDS; round++) {
    const before = strokes.slice();
    goOut(strokes, valueAt);
    if (largestChange(before, strokes) < CLOSE_ENOUGH) return;
  }
}

/**
 * Works the strokes out anew from near to far, each distance from those before it, and none more than
 * from farther out: while going by what was known of there, at the end by what was found there.
 */
function goOut(strokes: Float64Array, valueAt: (d: number) => number): void {
  const found = strokes.map((_, d) => {
    const value = valueAt(d);
    strokes[d] = Math.min(value, strokes[d + 1] ?? Infinity);
    return value;
  });
  for (let d = strokes.length - 1; d >= 0; d--)
    strokes[d] = Math.min(found[d]!, strokes[d + 1] ?? Infinity);
}

const largestChange = (before: Float64Array, after: Float64Array): number =>
  after.reduce((most, value, d) => Math.max(most, Math.abs(value - before[d]!)), 0);
