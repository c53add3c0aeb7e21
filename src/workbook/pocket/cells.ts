/** Where the figures behind the Pocket sheet stand, and references to them. */
import { cellRef, columnLetters } from "../a1";
import type { CellsPlan, FormulaPlan, NumberFormat, Style } from "../blueprint/types";
import type { CellValue } from "../port";

export type Block = CellsPlan | FormulaPlan;

export const fixed = (column: number, row: number): string => `$${columnLetters(column)}$${row}`;
export const fixedArea = (left: number, top: number, columns: number, rows: number): string =>
  `${fixed(left, top)}:${fixed(left + columns - 1, top + rows - 1)}`;

/** A block of frozen figures, and its reference for formulas. */
export function frozen(
  left: number,
  top: number,
  values: readonly (readonly CellValue[])[],
): { block: CellsPlan; ref: string } {
  const at = cellRef({ row: top, column: left });
  return {
    block: { kind: "cells", at, values, style: "hint" },
    ref: fixedArea(left, top, values[0]!.length, values.length),
  };
}

export const formula = (
  column: number,
  row: number,
  text: string,
  style: Style = "hint",
  format?: NumberFormat,
): FormulaPlan => ({
  kind: "formula",
  at: cellRef({ row, column }),
  formula: `=${text}`,
  style,
  ...(format === undefined ? {} : { format }),
});

/**
 * Nothing, said in a way that makes the formula follow these cells. The embedded workbook does not
 * see cells that stand only inside INDEX, and would keep an old value.
 */
export const tracked = (cells: string): string => `0*SUM(${cells})`;

/** Columns behind the Pocket sheet's answers, and the row under their heading. */
export const TOP = 2;
export const COLUMN = {
  /** Inputs as the sheet takes them, and where they stand on the axes. */
  figures: 6,
  /** Three columns of weights, and under them a square of four by four. */
  weights: 8,
  /** By disc type: whether all about the place is in reach, and the plays-like distance. */
  sure: 12,
  plays: 13,
  anchors: 14,
  /** By disc, beside the list of discs. */
  type: 15,
  discPlays: 16,
  place: 17,
  placeShare: 18,
  stretch: 19,
  stretchShare: 20,
  cost: 21,
  power: 22,
  rank: 23,
  costOfRest: 24,
  rankOfRest: 25,
  /** By disc: spread of the throw beyond its own, from the doubt of plays-like. */
  doubt: 26,
  /** By disc type, and last where the type is not known: square of the doubt of plays-like. */
  variance: 27,
  /** Frozen grids, two for each type. */
  grids: 28,
  /** How far unstated types play off the mean of two types. */
  bends: 92,
  /** By disc: cost and power by each frozen table alone. */
  byTable: 109,
  nodes: 114,
  /** Frozen grids of the square of the doubt, one for each type and one where it is not known. */
  doubts: 117,
  /** Frozen tables of costs and powers. */
  tables: 158,
} as const;
/** Rows among the figures. */
export const ROW = {
  known: 2,
  distance: 3,
  rise: 6,
  wind: 9,
  nearer: 12,
  share: 13,
  useFirst: 16,
  best: 17,
  second: 18,
} as const;
/** First row of the list of discs. */
export const FIRST_DISC = 24;
/** The three inputs, top to bottom. */
export const INPUTS = { distance: "$B$5", rise: "$B$6", wind: "$B$7" } as const;
