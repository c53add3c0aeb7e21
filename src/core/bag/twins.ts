/** Discs that do the same thing. */
import { bagInHand, suitsLine } from "../choice/bagInHand";
import { nextCarry } from "../carry/nextCarry";
import { HOLES_A_ROUND, TWIN_OVERLAP, TWIN_STROKES } from "../constants";
import type { Card, CardRow, Hole, Settings } from "../types";
import { worth } from "./worth";

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
