/** The ladder: where each disc goes, longest at the top. Figures and places on the plot, no drawing. */
import { knownToM } from "../../core/carry/needed";
import { nextCarry, type NextCarry } from "../../core/carry/student";
import type { CardRow } from "../../core/types";
import type { Book } from "../book/book";
import { oncePer } from "../book/oncePer";
import { dotsOf, type Dot } from "../field/dots";
import { scale, type Scale } from "../plots/scale";

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
