/** How wide the columns of a sheet are and how high its rows, px. */
import type { ICellData } from "@univerjs/core";
import type { SheetPlan } from "../blueprint/types";
import { blockRange } from "./blocks";
import type { RenderedBlocks } from "./sketch";

const PIXELS_A_CHARACTER = 7;
const CELL_PADDING = 8;
/** Width of the button in a table's header. */
const HEADER_BUTTON = 18;
/** Line height of a letter of one point. */
const PIXELS_A_POINT = 1.5;
const USUAL_ROW_PIXELS = 26;

const columnPixels = (characters: number): number =>
  Math.round(characters * PIXELS_A_CHARACTER + CELL_PADDING);

/** Widths by column: those of the sheet, over them those of its tables. */
export function columnWidths(plan: SheetPlan): Record<number, { w: number }> {
  const widths: Record<number, { w: number }> = {};
  plan.widths?.forEach((width, column) => (widths[column] = { w: columnPixels(width) }));
  for (const block of plan.blocks)
    if (block.kind === "table")
      block.columns.forEach((column, offset) => {
        widths[blockRange(block).startColumn + offset] = {
          w: columnPixels(column.width) + HEADER_BUTTON,
        };
      });
  return widths;
}

/** Rows that hold larger letters than the usual row has room for. */
export function rowHeights(cells: RenderedBlocks["cells"]): Record<number, { h: number }> {
  const heights: Record<number, { h: number }> = {};
  for (const [row, line] of Object.entries(cells)) {
    const points = Object.values(line as Record<number, ICellData>).map(({ s }) =>
      typeof s === "object" ? (s?.fs ?? 0) : 0,
    );
    const pixels = Math.ceil(Math.max(...points) * PIXELS_A_POINT) + CELL_PADDING;
    if (pixels > USUAL_ROW_PIXELS) heights[Number(row)] = { h: pixels };
  }
  return heights;
}
