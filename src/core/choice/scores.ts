/** The score of a round: not one number, but the chance of each. */
import { MOST_STROKES, UPPER_TENTH } from "../constants";
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { remember } from "../memory";
import { messages } from "../messages";
import type { Card, Hole, PuttingRow, Settings } from "../types";
import { answerKey } from "./plan";
import { picksOf } from "./rank";
import { type BestThrow, type Game, gameOf, shareMade, type StrokesTable } from "./strokes";
import { orWhy } from "./target";
import { type Ends, endsOf, hasTrouble, plainEnds } from "./trouble";

/**
 * The chance to hole out in 0, 1, 2 … strokes; the last entry, MOST_STROKES, stands for that many and
 * more, so that the entries sum to 1.
 */
export type Distribution = Float64Array;

const none = (): Distribution => new Float64Array(MOST_STROKES + 1);

/** From every whole metre, with the throws and putts that the table of strokes chose. */
export type DistributionTable = readonly Distribution[];

/** Where the ends of a throw fall among whole metres: the share at each, by the strokes that they cost. */
interface Fallen {
  readonly metres: readonly number[];
  readonly strokes: readonly number[];
  readonly shares: readonly number[];
  readonly again: number;
}

/** Each end is shared out between the two metres about it, for values that are linear between them. */
function fallen({ leftM, shares, safe, again }: Ends, last: number): Fallen {
  const sums = [new Float64Array(last + 1), new Float64Array(last + 1)];
  leftM.forEach((left, end) => {
    const sum = sums[end < safe ? 0 : 1]!;
    const metre = Math.min(Math.floor(left), last);
    const part = metre < last ? left - metre : 0;
    sum[metre] = sum[metre]! + shares[end]! * (1 - part);
    if (part > 0) sum[metre + 1] = sum[metre + 1]! + shares[end]! * part;
  });
  const found = { metres: [] as number[], strokes: [] as number[], shares: [] as number[], again };
  sums.forEach((sum, penalty) =>
    sum.forEach((share, metre) => {
      if (share === 0) return;
      found.metres.push(metre);
      found.strokes.push(1 + penalty);
      found.shares.push(share);
    }),
  );
  return found;
}

/** The distribution of a throw that ends so, `table` saying what follows from each distance left. */
function afterThrow(
  { metres, strokes, shares, again }: Fallen,
  table: DistributionTable,
): Distribution {
  const sum = none();
  for (let end = 0; end < metres.length; end++) {
    const later = table[metres[end]!]!;
    const more = strokes[end]!;
    const share = shares[end]!;
    for (let k = more; k < MOST_STROKES; k++) sum[k] = sum[k]! + share * later[k - more]!;
  }
  // From the same spot once more, with the penalty: each entry follows from the one two strokes before.
  for (let k = 2; k < MOST_STROKES; k++) sum[k] = sum[k]! + again * sum[k - 2]!;
  const told = sum.reduce((all, share) => all + share, 0);
  sum[MOST_STROKES] = Math.max(0, 1 - told);
  return sum;
}

function afterPutt(distanceM: number, putting: readonly PuttingRow[]): Distribution {
  const sum = none();
  const made = shareMade(distanceM, putting);
  sum[1] = made;
  sum[2] = 1 - made;
  return sum;
}

/** Rounds of going out from the target until the distributions hold; wild throws end farther out than they began. */
const SETTLING_ROUNDS = 3;

/**
 * The distribution behind each of the expected strokes of a table: q_k(d) is the mean, over where the best
 * throw from d may end, of q_(k − 1) there; Σ k·q_k is the expected strokes.
 */
export function distributionTable(
  { strokes, choices }: StrokesTable,
  putting: readonly PuttingRow[],
): DistributionTable {
  const last = choices.length - 1;
  const ends = choices.map((best) => best && fallen(endsOfBest(best), last));
  const table: Distribution[] = choices.map((best, d) => {
    const sum = none();
    if (best) sum[Math.min(MOST_STROKES, Math.round(strokes[d]!))] = 1;
    else sum.set(afterPutt(d, putting));
    return sum;
  });
  for (let round = 0; round < SETTLING_ROUNDS; round++) {
    ends.forEach((end, d) => {
      if (end) table[d] = afterThrow(end, table);
    });
  }
  return table;
}

const endsOfBest = ({ landing, target }: BestThrow): Ends => plainEnds(landing, target);

// A course.

export interface HoleScores {
  readonly hole: string;
  readonly par: number | null;
  /** Expected strokes. */
  readonly mean: number;
  /** Chance to hole out in exactly 0, 1, 2 … strokes; the last is that many or more. */
  readonly chances: readonly number[];
}

export interface TotalScore {
  readonly total: number;
  readonly chance: number;
  /** Chance of this total or a better one. */
  readonly orBetter: number;
}

export interface Scores {
  readonly holes: readonly HoleScores[];
  /** Totals that are likelier than one in a thousand, lowest first. */
  readonly totals: readonly TotalScore[];
  readonly mean: number;
  /** Eight rounds of ten lie between, both included. */
  readonly low: number;
  readonly high: number;
  /** The course's par; null where a hole has none. */
  readonly par: number | null;
}

const memory = remember<Scores>(16);
const tables = new WeakMap<StrokesTable, DistributionTable>();

/**
 * The scores of a round with the plan's disc on every hole: each hole's distribution, and their
 * convolution, holes taken as independent. Throws `unavailable`, naming the hole, where one has no answer,
 * since a round without it is no round.
 *
 * @example
 * scoresOf(holes, card, settings).mean // 47.1
 */
export function scoresOf(holes: readonly Hole[], card: Card, settings: Settings): Scores {
  return memory(answerKey(card, settings, holes), () => {
    const game = gameOf(card, settings);
    const found = holes.map((hole) => holeScores(hole, game, settings));
    const pars = found.map(({ par }) => par);
    const totals = convolved(found.map(({ chances }) => chances));
    return {
      holes: found,
      ...spanOf(totals),
      mean: found.reduce((sum, { mean }) => sum + mean, 0),
      par: pars.includes(null) ? null : pars.reduce<number>((sum, par) => sum + par!, 0),
    };
  });
}

function holeScores(hole: Hole, game: Game, settings: Settings): HoleScores {
  const named = { hole: hole.hole, par: hole.par };
  if (hole.distanceM <= settings.circleM) {
    const chances = afterPutt(hole.distanceM, settings.putting);
    return { ...named, mean: chances[1]! + 2 * chances[2]!, chances: Array.from(chances) };
  }
  const { answer, why } = orWhy(() => picksOf(hole, game, conditionsOf(settings), settings)[0]!);
  if (!answer) throw unavailable(messages.choice.noScore(hole.hole, why ?? ""));
  const { pick, strokes } = answer;
  const { thrown, target, at, aimM } = pick;
  const ends = hasTrouble(hole)
    ? endsOf(thrown.form, thrown.powers[at]!, target, hole, aimM)
    : plainEnds(thrown.landingAt(at, target), target);
  const played = game.tableFor(hole.distanceM);
  let table = tables.get(played);
  if (!table) tables.set(played, (table = distributionTable(played, settings.putting)));
  return {
    ...named,
    mean: strokes,
    chances: Array.from(afterThrow(fallen(ends, table.length - 1), table)),
  };
}

function convolved(holes: readonly (readonly number[])[]): number[] {
  return holes.reduce<number[]>(
    (sums, chances) => {
      const next = new Array<number>(sums.length + chances.length - 1).fill(0);
      sums.forEach((sum, total) =>
        chances.forEach((chance, k) => (next[total + k] = next[total + k]! + sum * chance)),
      );
      return next;
    },
    [1],
  );
}

/** Likelier than this is told. */
const LEAST_TOLD = 0.001;

function spanOf(chances: readonly number[]): Pick<Scores, "totals" | "low" | "high"> {
  let orBetter = 0;
  const all = chances.map((chance, total) => ({ total, chance, orBetter: (orBetter += chance) }));
  const upTo = (share: number): number => all.find((one) => one.orBetter >= share)?.total ?? 0;
  return {
    totals: all.filter(({ chance }) => chance > LEAST_TOLD),
    low: upTo(1 - UPPER_TENTH),
    high: upTo(UPPER_TENTH),
  };
}
