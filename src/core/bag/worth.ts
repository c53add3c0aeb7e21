/** What each disc is worth on a course. */
import { nextCarry } from "../carry/student";
import { bagInHand, candidates, suitsLine, type Throwable } from "../choice/bagInHand";
import { answerKey } from "../choice/plan";
import { byStrokes, leastCost, type Pick, picksBy } from "../choice/rank";
import { type Game, gameOf, makeGame } from "../choice/strokes";
import { orWhy } from "../choice/target";
import { HOLES_A_ROUND, TWIN_OVERLAP, TWIN_STROKES } from "../constants";
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { remember } from "../memory";
import { messages } from "../messages";
import type { Card, CardRow, Hole, Settings } from "../types";

// The first throw of a hole, with this disc or that at home.

export interface TeeShot {
  readonly hole: Hole;
  /** Every disc that the hole may be played with, cheapest first: cost in strokes with the whole bag. */
  readonly picks: readonly Pick[];
}

/** The tee shots of the holes that have an answer; throws `unavailable` where none has. */
export function teeShots(holes: readonly Hole[], game: Game, settings: Settings): TeeShot[] {
  const answers = holes.map((hole) => orWhy(() => teeShot(hole, game, settings)));
  const shots = answers.flatMap(({ answer }) => answer ?? []);
  if (shots.length === 0) throw unavailable(answers[0]?.why ?? messages.bag.noHole());
  return shots;
}

function teeShot(hole: Hole, game: Game, settings: Settings): TeeShot {
  const able = candidates(hole, game.discs, conditionsOf(settings));
  const table = game.strokesFor(hole.distanceM);
  const picks = picksBy(able, byStrokes(hole, table));
  if (picks.length === 0) throw unavailable(messages.choice.onlyTrouble());
  return { hole, picks: picks.sort((a, b) => a.cost - b.cost) };
}

/**
 * Least strokes of a hole with some of the discs only, `game` being theirs. Losing a disc never makes a
 * later throw cheaper, so what a disc cost with the whole bag is the least that it can cost now, and the
 * search ends at the first that cannot win.
 */
export function strokesWith({ hole, picks }: TeeShot, game: Game, settings: Settings): number {
  const able = new Set(game.discs.map(({ row }) => row));
  const left = picks.filter(({ thrown }) => able.has(thrown.row));
  if (left.length === 0) return teeShot({ ...hole, line: "" }, game, settings).picks[0]!.cost;
  const criterion = byStrokes(hole, game.strokesFor(hole.distanceM));
  let least = Infinity;
  for (const pick of left) {
    if (pick.cost >= least) break;
    least = Math.min(least, leastCost(pick, criterion).cost);
  }
  return least;
}

export interface Worth {
  readonly disc: string;
  /** Strokes lost on 18 holes like these if it stays at home; 0 or more. */
  readonly strokes: number;
}

const memory = remember<Worth[]>(16);

/**
 * What each disc in the bag is worth on a course, most first: the strokes that its owner loses on 18 holes
 * like these without it, every hole picked again for least strokes and every later throw too. Where no other disc
 * suits the line of a hole, any other is thrown. Holes that have no answer do not count. Throws
 * `unavailable` where no hole has an answer, or fewer than two discs are in the bag.
 *
 * @example
 * worth(holes, card, DEFAULT_SETTINGS)[0] // { disc: "Mint fairway", strokes: 0.6 }
 */
export function worth(holes: readonly Hole[], card: Card, settings: Settings): Worth[] {
  if (bagInHand(card).length < 2) throw unavailable(messages.bag.oneDisc());
  return memory(answerKey(card, settings, holes), () => {
    const game = gameOf(card, settings);
    const shots = teeShots(holes, game, settings);
    return game.discs
      .map((home) => ({ disc: home.row.disc, strokes: worthOf(home, shots, game, settings) }))
      .sort((a, b) => b.strokes - a.strokes);
  });
}

function worthOf(
  home: Throwable,
  shots: readonly TeeShot[],
  game: Game,
  settings: Settings,
): number {
  if (!isNeeded(home, shots, game)) return 0;
  const others = game.discs.filter((thrown) => thrown !== home);
  const without = makeGame(others, settings, game);
  const lost = shots.reduce(
    (sum, shot) => sum + strokesWith(shot, without, settings) - shot.picks[0]!.cost,
    0,
  );
  return Math.max(0, (lost / shots.length) * HOLES_A_ROUND);
}

/**
 * Whether a tee or a later throw asks for a disc, `game` being that of the bag with it; one that is not
 * asked for is not missed.
 */
export function isNeeded(home: Throwable, shots: readonly TeeShot[], game: Game): boolean {
  if (game.chosen.has(home)) return true;
  const able = new Set(game.discs.map(({ row }) => row));
  return shots.some(({ hole, picks }) => {
    if (hole.distanceM > game.nearM) return true;
    const first = picks.find(({ thrown }) => able.has(thrown.row));
    return !first || first.thrown.row === home.row;
  });
}

// Discs that do the same thing.

export interface Twins {
  readonly a: string;
  readonly b: string;
  /** Strokes a round that staying at home costs, each alone. */
  readonly costA: number;
  readonly costB: number;
  /** Share of the wider 80 % interval of carry that lies in both. */
  readonly overlap: number;
}

/**
 * Pairs of discs of which either could stay at home for less than 0.02 strokes a round and whose
 * carries overlap by more than 80 %, closest first. The round is 18 level, calm holes, evenly from the
 * shortest disc's carry to the longest's. Discs of different lines are never twins. None for fewer than
 * two discs; throws `unavailable` where the bag is empty.
 */
export function twins(card: Card, settings: Settings): Twins[] {
  const rows = bagInHand(card);
  if (rows.length < 2) return [];
  const costs = new Map(
    worth(evenCourse(rows), card, settings).map(({ disc, strokes }) => [disc, strokes]),
  );
  const spare = rows.filter(({ disc }) => costs.get(disc)! < TWIN_STROKES);
  return spare
    .flatMap((a, index) => spare.slice(index + 1).map((b) => pair(a, b, costs)))
    .filter((both) => both !== null)
    .sort((one, other) => other.overlap - one.overlap);
}

function pair(a: CardRow, b: CardRow, costs: ReadonlyMap<string, number>): Twins | null {
  const overlap = overlapOf(a, b);
  if (!(overlap > TWIN_OVERLAP) || !suitsLine(a.line, b.line)) return null;
  return { a: a.disc, b: b.disc, costA: costs.get(a.disc)!, costB: costs.get(b.disc)!, overlap };
}

/** By the 80 % intervals of the next smooth carry. */
function overlapOf(a: CardRow, b: CardRow): number {
  const [one, other] = [nextCarry(a), nextCarry(b)];
  const shared = Math.min(one.highM, other.highM) - Math.max(one.lowM, other.lowM);
  return Math.max(0, shared) / Math.max(one.highM - one.lowM, other.highM - other.lowM);
}

function evenCourse(rows: readonly CardRow[]): Hole[] {
  const [longestM, shortestM] = [Math.exp(rows[0]!.mu), Math.exp(rows.at(-1)!.mu)];
  return Array.from({ length: HOLES_A_ROUND }, (_, index) => ({
    row: index + 1,
    course: "",
    hole: `${index + 1}`,
    par: null,
    distanceM: shortestM + ((longestM - shortestM) * index) / (HOLES_A_ROUND - 1),
    riseM: 0,
    headwindMps: 0,
    longTroubleM: null,
    shortTroubleM: null,
    leftTroubleM: null,
    rightTroubleM: null,
    bearingDegrees: null,
    crosswindMps: 0,
    line: "",
    note: "",
  }));
}
