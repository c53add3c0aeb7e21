/** Rows of a table: adding, changing, removing, each as the changes of one step. */
import type { ICellData } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { PortError, type CellValue, type Row, type RowAt } from "../port";
import { sentences } from "../sentences";
import { formulaCell, type Grid, isCellError, writtenCell } from "./grid";
import { type Change, setCells } from "./changes";
import type { Engine } from "./engine";
import type { FoundTable, Tables } from "./tables";

type Lines = Record<number, Record<number, ICellData>>;
const CLEARED: ICellData = { ...writtenCell(""), s: null };

const equal = (a: CellValue, b: CellValue): boolean =>
  isCellError(a) || isCellError(b)
    ? isCellError(a) && isCellError(b) && a.error === b.error
    : a === b;

export class Rows {
  constructor(
    private readonly engine: Engine,
    private readonly grid: Grid,
    private readonly tables: Tables,
  ) {}

  add(table: FoundTable, rows: readonly Row[]): { changes: Change[]; indexes: number[] } {
    const first = this.tables.lastFilledRow(table) + 1;
    const endRow = first + rows.length - 1;
    this.requireRoom(table, endRow);
    const cells: Lines = {};
    rows.forEach((row, at) => (cells[first + at] = this.cellsOf(table, row)));
    const changes = [
      ...this.tables.lengthen(table, endRow),
      setCells(this.engine, table.sheet.getSheetId(), cells),
    ];
    const indexes = rows.map((_, at) => first + at - table.range.startRow - 1);
    return { changes, indexes };
  }

  change(table: FoundTable, changes: readonly (RowAt & { readonly becomes: Row })[]): Change[] {
    const cells: Lines = {};
    for (const { index, was, becomes } of changes) {
      const row = this.requireUnchanged(table, { index, was });
      cells[row] = { ...cells[row], ...this.cellsOf(table, becomes) };
    }
    return [setCells(this.engine, table.sheet.getSheetId(), cells)];
  }

  /** Rows below move up; what is left over at the end is cleared and leaves the table, which keeps one row. */
  remove(table: FoundTable, rows: readonly RowAt[]): Change[] {
    const { range, sheet } = table;
    const gone = new Set(rows.map((row) => this.requireUnchanged(table, row)));
    if (gone.size === 0) return [];
    const body = Array.from({ length: range.endRow - range.startRow }, (_, at) => at + 1);
    const kept = body.map((at) => range.startRow + at).filter((row) => !gone.has(row));
    const endRow = range.startRow + Math.max(kept.length, 1);
    const cells: Lines = {};
    for (const row of body.map((at) => range.startRow + at)) {
      const source = kept[row - range.startRow - 1];
      if (source !== row) cells[row] = this.movedCells(table, source, row, row <= endRow);
    }
    return [
      setCells(this.engine, sheet.getSheetId(), cells),
      ...this.tables.shorten(table, endRow),
    ];
  }

  private movedCells(
    { sheet, range }: FoundTable,
    source: number | undefined,
    row: number,
    stays: boolean,
  ): Record<number, ICellData> {
    const lexer = this.engine.injector.get(LexerTreeBuilder);
    const cells: Record<number, ICellData> = {};
    for (let column = range.startColumn; column <= range.endColumn; column++) {
      const from = source ?? row;
      const formula = this.grid.formula(sheet, from, column);
      const { v, t, p, s } = this.grid.stored(sheet, from, column) ?? {};
      if (source !== undefined)
        cells[column] = formula
          ? { ...formulaCell(lexer.moveFormulaRefOffset(formula, 0, row - from)), s: s ?? null }
          : { ...writtenCell(""), v: v ?? null, t: t ?? null, p: p ?? null, s: s ?? null };
      else if (!stays) cells[column] = CLEARED;
      else if (!formula) cells[column] = writtenCell("");
    }
    return cells;
  }

  private requireRoom(table: FoundTable, endRow: number): void {
    const below = { ...table.range, startRow: table.range.endRow + 1, endRow };
    const values = this.grid.values({ sheet: table.sheet, range: below });
    if (values.some((row) => row.some((value) => value !== "")))
      throw new PortError("invalid", sentences.noRoom(table.name));
  }

  /** The sheet row of a body row that still holds what its reader saw. */
  private requireUnchanged(table: FoundTable, { index, was }: RowAt): number {
    const row = table.range.startRow + 1 + index;
    const changed = (): PortError =>
      new PortError("changed", sentences.rowChanged(table.name, index + 1));
    if (index < 0 || row > table.range.endRow) throw changed();
    for (const [header, value] of Object.entries(was)) {
      const column = this.requireColumn(table, header);
      if (!equal(this.grid.value(table.sheet, row, column), value)) throw changed();
    }
    return row;
  }

  private requireColumn({ headers, name, range }: FoundTable, header: string): number {
    const wanted = header.trim().toLowerCase();
    const at = headers.findIndex((known) => known.trim().toLowerCase() === wanted);
    if (at < 0) throw new PortError("missing", sentences.noColumn(name, header));
    return range.startColumn + at;
  }

  private cellsOf(table: FoundTable, row: Row): Record<number, ICellData> {
    const cells: Record<number, ICellData> = {};
    for (const [header, value] of Object.entries(row)) {
      const column = this.requireColumn(table, header);
      if (this.grid.formula(table.sheet, table.range.endRow, column) !== null)
        throw new PortError("invalid", sentences.formulaColumn(table.name, header));
      cells[column] = checkedCell(value);
    }
    return cells;
  }
}

/** A cell for a value that can be stored. */
export function checkedCell(value: CellValue): ICellData {
  if (typeof value === "number" && !Number.isFinite(value))
    throw new PortError("invalid", sentences.notANumber);
  return writtenCell(value);
}
