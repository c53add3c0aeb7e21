/** One sheet of the blueprint as the engine's own description of a sheet, and what goes with it. */
import {
  BooleanNumber,
  type ICellData,
  type IObjectMatrixPrimitiveType,
  type IRange,
  type IStyleData,
  type IWorksheetData,
} from "@univerjs/core";
import { readArea } from "../a1";
import type { CellsPlan, FormulaPlan, ListRule, SheetPlan, TablePlan } from "../blueprint/types";
import { HEADER, styleOf } from "./changes";
import { engineRange, formulaCell, writtenCell } from "./grid";

// Where the blocks of a sheet lie.

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

// Blocks of the blueprint as cells of the engine, and what goes with the cells.

export interface RenderedTable {
  readonly name: string;
  readonly range: IRange;
  readonly header: string[];
}

export interface RenderedBlocks {
  readonly cells: IObjectMatrixPrimitiveType<ICellData>;
  readonly tables: RenderedTable[];
  readonly names: { readonly name: string; readonly range: IRange }[];
  readonly lists: { readonly range: IRange; readonly list: ListRule }[];
  readonly bars: IRange[];
}

class Sketch implements RenderedBlocks {
  readonly cells: Record<number, Record<number, ICellData>> = {};
  readonly tables: RenderedTable[] = [];
  readonly names: { name: string; range: IRange }[] = [];
  readonly lists: { range: IRange; list: ListRule }[] = [];
  readonly bars: IRange[] = [];

  put(row: number, column: number, content: ICellData, style: IStyleData): void {
    (this.cells[row] ??= {})[column] = { ...content, s: style };
  }

  add(block: Block): void {
    const range = blockRange(block);
    if (block.kind === "table") this.addTable(block, range);
    else if (block.kind === "cells") this.addCells(block, range);
    else this.addFormula(block, range);
  }

  private addTable(table: TablePlan, range: IRange): void {
    const first = range.startRow + 1;
    table.columns.forEach((column, offset) => {
      const at = range.startColumn + offset;
      const body = { startRow: first, endRow: range.endRow, startColumn: at, endColumn: at };
      this.put(range.startRow, at, writtenCell(column.header), HEADER);
      const style = styleOf(column.style, column.format, true);
      for (let row = first; row <= range.endRow; row++) {
        const value = table.rows[row - first]?.[offset] ?? "";
        this.put(row, at, column.formula ? formulaCell(column.formula) : writtenCell(value), style);
      }
      if (column.list) this.lists.push({ range: body, list: column.list });
      if (column.bar) this.bars.push(body);
    });
    this.tables.push({
      name: table.name,
      range,
      header: table.columns.map((column) => column.header),
    });
  }

  private addCells(block: CellsPlan, range: IRange): void {
    block.values.forEach((row, down) =>
      row.forEach((value, right) => {
        const style = styleOf(block.styles?.[right] ?? block.style, block.format);
        this.put(range.startRow + down, range.startColumn + right, writtenCell(value), style);
      }),
    );
    if (block.list) this.lists.push({ range, list: block.list });
    if (block.name) this.names.push({ name: block.name, range });
  }

  private addFormula(block: FormulaPlan, range: IRange): void {
    const { startRow, startColumn } = range;
    if (block.spill) this.dressSpill(block, range);
    else this.put(startRow, startColumn, {}, styleOf(block.style, block.format));
    Object.assign(this.cells[startRow]![startColumn]!, formulaCell(block.formula));
    if (block.name) this.names.push({ name: block.name, range });
  }

  /** Formats for the cells that the formula will fill. */
  private dressSpill(block: FormulaPlan, range: IRange): void {
    const { rows, columns, formats, bars } = block.spill!;
    const styles = Array.from({ length: columns }, (_, right) =>
      styleOf(block.style, formats?.[right] ?? block.format, true),
    );
    for (let down = 0; down < rows; down++)
      styles.forEach((style, right) => {
        const dress = down === 0 && hasHeader(block) ? HEADER : style;
        this.put(range.startRow + down, range.startColumn + right, {}, dress);
      });
    for (const bar of bars ?? []) {
      const at = range.startColumn + bar;
      const startRow = range.startRow + (hasHeader(block) ? 1 : 0);
      this.bars.push({ ...range, startRow, startColumn: at, endColumn: at });
    }
  }
}

export function renderBlocks(blocks: readonly Block[]): RenderedBlocks {
  const sketch = new Sketch();
  for (const block of blocks) sketch.add(block);
  return sketch;
}

// How wide the columns of a sheet are and how high its rows, px.

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

const SPARE_ROWS = 200;
const SPARE_COLUMNS = 6;
const LEAST_COLUMNS = 26;

/** The engine draws no charts; where one would stand, a line says so. */
export const chartNote = (title: string): string => `${title}: drawn in Excel and in saved files.`;

const chartNotes = ({ charts = [] }: SheetPlan): CellsPlan[] =>
  charts.map(({ title, from }) => ({
    kind: "cells",
    at: from,
    values: [[chartNote(title)]],
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
