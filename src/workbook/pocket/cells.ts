/** Where the figures behind the Pocket sheet stand, and references to them. */
import { cellRef, columnLetters } from "../a1";
import type { CellValue } from "../port";
import type { CellsPlan, FormulaPlan, NumberFormat, Style } from "../blueprint/types";

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
