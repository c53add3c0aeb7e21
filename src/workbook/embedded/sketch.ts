/** Blocks of the blueprint as cells of the engine, and what goes with the cells. */
import type { ICellData, IObjectMatrixPrimitiveType, IRange, IStyleData } from "@univerjs/core";
import type { CellsPlan, FormulaPlan, ListRule, TablePlan } from "../blueprint/types";
import { blockRange, hasHeader, type Block } from "./blocks";
import { formulaCell, writtenCell } from "./cells";
import { HEADER, styleOf } from "./styles";

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
