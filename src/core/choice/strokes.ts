/** Expected strokes from a distance. */
import { LONGEST_HOLE_M } from "../constants";
import { unavailable, unusable } from "../errors";
import { conditionsOf } from "../flight/air";
import { remember } from "../memory";
import { messages } from "../messages";
import type { Card, CardRow, PuttingRow, Settings } from "../types";
import { bagInHand, type Throwable, throwable } from "./bagInHand";
import { type Landing, meanOver } from "./landing";
import { downhill, powerThatReaches } from "./power";
import { type LevelTarget, levelTargets, plainTarget, type Target } from "./target";
import { endsOf, hasTrouble, strokesOf, type Trouble } from "./trouble";

// The throw that takes least strokes from one distance.

/** What the coarse look may be wrong by, twice over. */
const COARSE_DOUBT = 0.1;

export interface BestThrow {
  readonly thrown: Throwable;
  /** The number of its power. */
  readonly at: number;
  readonly landing: Landing;
  readonly target: Target;
}

/**
 * The search for one bag: a coarse look at every disc, a fine one at those that may be the best. At
 * least one disc. One that the flight cannot bring there is left out of that distance alone.
 */
export function bestThrowFinder(
  discs: readonly Throwable[],
  levelTarget: LevelTarget,
): (distanceM: number, table: Float64Array) => BestThrow {
  return (distanceM, table) => {
    const able = discs.flatMap((thrown) => {
      const target = levelTarget(thrown.row, distanceM);
      return target ? [{ thrown, target }] : [];
    });
    // Where no disc gets there in one throw, every throw lays up, and the air hardly matters.
    const all = () => discs.map((thrown) => ({ thrown, target: plainTarget(distanceM) }));
    const looks = (able.length > 0 ? able : all()).map(({ thrown, target }) => {
      const costAt = (landingAt: Throwable["landingAt"]) => (at: number) =>
        meanOver(landingAt(at, target), target, table);
      const start = powerThatReaches(thrown.form, thrown.powers, target);
      const coarse = downhill(start, thrown.powers.length, costAt(thrown.coarseLandingAt));
      return { thrown, target, coarse, costAt: costAt(thrown.landingAt) };
    });
    const limit = Math.min(...looks.map(({ coarse }) => coarse.cost)) + COARSE_DOUBT;
    return looks
      .filter(({ coarse }) => coarse.cost <= limit)
      .map(({ thrown, target, coarse, costAt }) => {
        const { index, cost } = downhill(coarse.index, thrown.powers.length, costAt);
        return { thrown, at: index, target, landing: thrown.landingAt(index, target), cost };
      })
      .reduce((best, other) => (other.cost < best.cost ? other : best));
  };
}

// Holing out with the putter.

/**
 * Share of putts made from `distanceM`: certain at the target, then linear between the rows of the
 * putting table (nearest first), and on to nothing at twice the last distance. Without rows nothing
 * but a disc at the target is made.
 *
 * @example
 * shareMade(3, [{ distanceM: 2, share: 0.9 }, { distanceM: 4, share: 0.7 }]) // 0.8
 */
export function shareMade(distanceM: number, putting: readonly PuttingRow[]): number {
  let nearer: PuttingRow = { distanceM: 0, share: 1 };
  for (const row of [...putting, { distanceM: puttingReachM(putting), share: 0 }]) {
    if (distanceM <= row.distanceM && row.distanceM > nearer.distanceM) {
      const part = (distanceM - nearer.distanceM) / (row.distanceM - nearer.distanceM);
      return nearer.share + Math.max(0, part) * (row.share - nearer.share);
    }
    nearer = row;
  }
  return distanceM <= 0 ? 1 : 0;
}

/** Farther out than twice the last row of the table nobody putts. */
export const puttingReachM = (putting: readonly PuttingRow[]): number =>
  2 * (putting.at(-1)?.distanceM ?? 0);

/**
 * Expected putts to hole out from `distanceM`: one, and a second where the first misses (assumption:
 * the second is made); Infinity beyond the putting reach.
 */
export const putts = (distanceM: number, putting: readonly PuttingRow[]): number =>
  distanceM <= puttingReachM(putting) ? 2 - shareMade(distanceM, putting) : Infinity;

// Expected strokes to hole out from every distance.

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
  const longestM = Math.exp(Math.max(...discs.map(({ form }) => form.mu)));
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

// A player's game: the discs in the bag, ready to be thrown, and the strokes that they take.

export interface Game {
  /** Longest first. */
  readonly discs: readonly Throwable[];
  /** Expected strokes to hole out from 0, 1, 2 … m, far enough for a shot of that distance. */
  readonly strokesFor: (distanceM: number) => Float64Array;
  /** The same with the throws behind it. */
  readonly tableFor: (distanceM: number) => StrokesTable;
  /** Discs that are the best from some distance up to `nearM`. */
  readonly chosen: ReadonlySet<Throwable>;
  readonly nearM: number;
  /** Strokes and throws to half a longest carry beyond `nearM`. */
  readonly near: StrokesTable;
}

const memory = remember<Game>(16);
/** The game last worked out for a card that is asked again and again: one look instead of a long key. */
const latest = new WeakMap<Card, { readonly settings: Settings; readonly game: Game }>();

/**
 * The game of a card under some settings, worked out once for the same content. Throws `unavailable`
 * where the bag is empty.
 */
export function gameOf(card: Card, settings: Settings): Game {
  const known = latest.get(card);
  if (known?.settings === settings) return known.game;
  const game = gameByContent(bagInHand(card), settings);
  latest.set(card, { settings, game });
  return game;
}

function gameByContent(rows: readonly CardRow[], settings: Settings): Game {
  const { putting, highestPower, courseCarry, courseSpread, courseSideRad, today, todaySd } =
    settings;
  const course = [courseCarry, courseSpread, courseSideRad, today, todaySd];
  const key = JSON.stringify([rows, putting, highestPower, course, conditionsOf(settings)]);
  return memory(key, () => {
    const discs = rows.map((row) => throwable(row, settings));
    return makeGame(discs, settings);
  });
}

/** Longest carries that a table reaches, and within which it is used: see `strokesTable`. */
const REACH_CARRIES = 2;
const USED_CARRIES = 1.5;

/** The game with these discs, at least one; `like` is one that differs little, to begin with. */
export function makeGame(discs: readonly Throwable[], settings: Settings, like?: Game): Game {
  const level = levelTargets(conditionsOf(settings));
  const longestM = Math.exp(Math.max(...discs.map(({ form }) => form.mu)));
  const upTo = (reachM: number, known?: StrokesTable) =>
    strokesTable(discs, settings.putting, level, reachM, known);
  const near = upTo(Math.ceil(REACH_CARRIES * longestM), like?.near);
  const nearM = Math.floor(USED_CARRIES * longestM);
  let far: StrokesTable | null = null;
  const tableFor = (distanceM: number): StrokesTable =>
    distanceM <= nearM
      ? near
      : (far ??= upTo(LONGEST_HOLE_M + Math.ceil(longestM), used(near, nearM)));
  return {
    discs,
    tableFor,
    strokesFor: (distanceM) => tableFor(distanceM).strokes,
    chosen: new Set(near.choices.flatMap((best) => (best ? [best.thrown] : []))),
    nearM,
    near,
  };
}

const used = ({ strokes, choices }: StrokesTable, reachM: number): StrokesTable => ({
  strokes: strokes.subarray(0, reachM + 1),
  choices: choices.slice(0, reachM + 1),
});

/**
 * The player's expected strokes to hole out from `distanceM`, 0 to 500 m, level and calm, putting
 * included; see `nearTable` for how. Linear between whole metres, good to about 0.005. Throws
 * `unusable` for what is no distance, `unavailable` beyond 500 m and where the bag is empty.
 */
export function strokesToHoleOut(distanceM: number, card: Card, settings: Settings): number {
  if (!(distanceM >= 0)) throw unusable(messages.flight.badDistance());
  if (distanceM > LONGEST_HOLE_M) throw unavailable(messages.choice.tooLong(LONGEST_HOLE_M));
  const table = gameOf(card, settings).strokesFor(distanceM);
  const metre = Math.min(Math.floor(distanceM), table.length - 2);
  return table[metre]! + (distanceM - metre) * (table[metre + 1]! - table[metre]!);
}

// Expected strokes to hole out with a throw now.

/**
 * Expected strokes with one disc at its power number `at`, its line `aimM` right of the target, this throw
 * included: 1 + E[V(distance left)], V being `table`, and penalties as `endsOf` has them.
 */
export const throwStrokes = (
  thrown: Throwable,
  at: number,
  aimM: number,
  target: Target,
  trouble: Trouble,
  table: Float64Array,
): number =>
  hasTrouble(trouble)
    ? strokesOf(endsOf(thrown.form, thrown.powers[at]!, target, trouble, aimM), table)
    : 1 + meanOver(thrown.landingAt(at, target), target, table);
