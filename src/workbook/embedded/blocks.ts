/** Where the blocks of a sheet lie. */
import type { IRange } from "@univerjs/core";
import { readArea } from "../a1";
import type { FormulaPlan, SheetPlan, TablePlan } from "../blueprint/types";
import { engineRange } from "./ranges";

export type Block = SheetPlan["blocks"][number];

const rangeFrom = (at: string, rows: number, columns: number): IRange => {
  const { startRow, startColumn } = engineRange(readArea(at)!);
  return {
    startRow,
    startColumn,
    endRow: startRow + Math.max(rows, 1) - 1,
    endColumn: startColumn + Math.max(columns, 1) - 1,
  };
};

const widest = (rows: readonly (readonly unknown[])[]): number =>
  rows.reduce((most, row) => Math.max(most, row.length), 1);

const tableRows = (table: TablePlan): number => Math.max(table.rows.length, table.least ?? 0, 1);

/** Cells that a block covers. */
export function blockRange(block: Block): IRange {
  if (block.kind === "table")
    return rangeFrom(block.at, tableRows(block) + 1, block.columns.length);
  if (block.kind === "cells") return rangeFrom(block.at, block.values.length, widest(block.values));
  return rangeFrom(block.at, block.spill?.rows ?? 1, block.spill?.columns ?? 1);
}

/** The first row of a spill is its header, unless the plan says otherwise or it is the only one. */
export const hasHeader = ({ spill }: FormulaPlan): boolean =>
  spill !== undefined && spill.rows > 1 && spill.header !== false;
