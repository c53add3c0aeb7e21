/** Which discs the bag could do without, and what the others are worth on the course. */
import { coverage, type CoverageRow, type Gap, gaps } from "../../core/bag/coverage";
import { twins, type Twins, worth, type Worth } from "../../core/bag/worth";
import { knownToM } from "../../core/carry/needed";
import { nextCarry, type NextCarry } from "../../core/carry/student";
import { type Trend, trendOf } from "../../core/carry/wear";
import type { CardRow, Verdict } from "../../core/types";
import { toMetres } from "../../core/units";
import { type Book, oncePer } from "../book/book";
import { type Answer, attempt } from "../controller";
import { type Dot, dotsOf } from "../field/model";
import { scale, type Scale } from "../plots/scale";

// How well the bag covers the distances, and where it does not; worked out once a reading.

/** Fine enough for a smooth line. */
const STEP = { ft: 5, m: 1.5 } as const;

export interface Covered {
  readonly rows: readonly CoverageRow[];
  readonly gaps: readonly Gap[];
}

/** Fewer throws say too little of a disc to call the bag short of one, or long of one. Assumption. */
const LEAST_THROWS = 3;

const isKnown = ({ inBag, throws }: CardRow): boolean => inBag && throws >= LEAST_THROWS;

/** Whether most discs of the bag have too few throws to speak of gaps and twins. */
export const isThin = ({ card: { rows } }: Book): boolean =>
  2 * rows.filter(isKnown).length <= rows.filter(({ inBag }) => inBag).length;

/** What a list shows at once, and what only when asked for. */
export const AT_ONCE = 3;

/** Gaps that cost the most first; none from thin data. */
export const coveredOf = oncePer((book: Book): Answer<Covered> => {
  const { card, settings } = book;
  return attempt(() => ({
    rows: coverage(card, settings, {
      stepM: toMetres(STEP[settings.distanceUnit], settings.distanceUnit),
    }),
    gaps: isThin(book) ? [] : gaps(card, settings).sort((one, other) => other.loss - one.loss),
  }));
});

// Which discs are changing.

export interface Drift {
  readonly disc: string;
  readonly trend: Trend;
}

/** A trend for every disc in the bag that has enough throws for one; changing ones first. */
export const driftsOf = oncePer(({ card, log, settings, bag }: Book): readonly Drift[] =>
  card.rows
    .filter(({ inBag, verdict }) => inBag && verdict !== "too few")
    .flatMap(({ disc }) => {
      const trend = attempt(() => trendOf(disc, log, settings, bag));
      return trend.ok ? [{ disc, trend: trend.value }] : [];
    })
    .sort((a, b) => rank(a) - rank(b)),
);

const rank = ({ trend }: Drift): number => (trend.verdict === "changing" ? 0 : 1);

// The ladder: where each disc goes, longest at the top. Figures and places on the plot, no drawing.

export interface Rung {
  readonly row: CardRow;
  readonly next: NextCarry;
  readonly knownM: number;
  readonly dots: readonly Dot[];
}

/** Discs in the bag, longest first. */
export const rungsOf = oncePer((book: Book): readonly Rung[] =>
  book.card.rows
    .filter(({ inBag }) => inBag)
    .map((row) => ({
      row,
      next: nextCarry(row),
      knownM: knownToM(row),
      dots: dotsOf(book, row.disc),
    })),
);

export const RUNG_PX = 38;
export const AXIS_PX = 24;
const EDGE_PX = 8;

export interface Ladder {
  readonly width: number;
  readonly height: number;
  readonly x: Scale;
  /** Height of the line of each rung. */
  readonly ys: readonly number[];
}

/** One scale in metres or feet for all rungs: `unitM` is the length of one unit. */
export function ladderOf(rungs: readonly Rung[], width: number, unitM: number): Ladder {
  const ends = rungs.flatMap(({ next, dots }) => [
    next.lowM,
    next.highM,
    ...dots.map(({ carryM }) => carryM),
  ]);
  const domain = [Math.min(...ends) / unitM, Math.max(...ends) / unitM] as const;
  return {
    width,
    height: rungs.length * RUNG_PX + AXIS_PX,
    x: scale(domain, [EDGE_PX, width - EDGE_PX]),
    ys: rungs.map((_, at) => at * RUNG_PX + RUNG_PX - 12),
  };
}

/** Pairs of which one disc is missed least first; none from thin data. */
export const twinsOf = oncePer(({ card, settings }: Book): Answer<readonly Twins[]> => {
  const known = new Set(card.rows.filter(isKnown).map(({ disc }) => disc));
  const cost = ({ costA, costB }: Twins): number => Math.min(costA, costB);
  return attempt(() =>
    twins(card, settings)
      .filter(({ a, b }) => known.has(a) && known.has(b))
      .sort((one, other) => cost(one) - cost(other)),
  );
});

export const worthOf = oncePer(({ holes, card, settings }: Book): Answer<readonly Worth[]> =>
  attempt(() => worth(holes, card, settings)),
);

/** Less than this is shown as nothing. */
const LEAST_STROKES = 0.005;

export const isMissed = ({ strokes }: Worth): boolean => strokes >= LEAST_STROKES;

/** The length of a bar, as a share of the longest; of discs that are missed. */
export const barShare = ({ strokes }: Worth, missed: readonly Worth[]): number =>
  strokes / Math.max(...missed.map((other) => other.strokes));

/** Said only where a disc does something. */
export const verdictWords = (verdict: Verdict): string =>
  verdict === "changing" ? ", and changing" : verdict === "steady" ? ", and steady" : "";
