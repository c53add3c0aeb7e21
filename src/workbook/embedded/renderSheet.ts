/** One sheet of the blueprint as the engine's own description of a sheet, and what goes with it. */
import { BooleanNumber, type IWorksheetData } from "@univerjs/core";
import type { CellsPlan, SheetPlan } from "../blueprint/types";
import { blockRange } from "./blocks";
import { columnWidths, rowHeights } from "./sheetSizes";
import { renderBlocks, type RenderedBlocks } from "./sketch";

const SPARE_ROWS = 200;
const SPARE_COLUMNS = 6;
const LEAST_COLUMNS = 26;

/** The engine draws no charts; where one would stand, a line says so. */
const chartNotes = ({ charts = [] }: SheetPlan): CellsPlan[] =>
  charts.map(({ title, from }) => ({
    kind: "cells",
    at: from,
    values: [[`${title}: drawn in Excel and in saved files.`]],
    style: "hint",
  }));

export function renderSheet(
  plan: SheetPlan,
  id: string,
): { sheet: Partial<IWorksheetData> & { id: string }; blocks: RenderedBlocks } {
  const blocks = renderBlocks([...plan.blocks, ...chartNotes(plan)]);
  const ranges = plan.blocks.map(blockRange);
  const rows = Math.max(...ranges.map((range) => range.endRow), 0) + 1 + SPARE_ROWS;
  const columns = Math.max(...ranges.map((range) => range.endColumn), 0) + 1 + SPARE_COLUMNS;
  const frozen = { ySplit: plan.frozenRows ?? 0, xSplit: plan.frozenColumns ?? 0 };
  const sheet = {
    id,
    name: plan.name,
    rowCount: rows,
    columnCount: Math.max(columns, LEAST_COLUMNS),
    cellData: blocks.cells,
    columnData: columnWidths(plan),
    rowData: rowHeights(blocks.cells),
    freeze: {
      ...frozen,
      startRow: frozen.ySplit || -1,
      startColumn: frozen.xSplit || -1,
    },
    showGridlines: BooleanNumber.TRUE,
  };
  return { sheet, blocks };
}
