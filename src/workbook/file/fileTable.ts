import type { Cell, Workbook, Worksheet } from "@cj-tech-master/excelts";
import { areaRef, readArea, type Area } from "../a1";
import { PortError, sameWord, type CellValue, type Row, type TableData } from "../port";
import { sentences } from "../sentences";
import { fromFile, sameValue, toFile } from "./cellValues";

type Model = ReturnType<Worksheet["getTables"]>[number]["model"];

const blank = (values: readonly CellValue[]): boolean => values.every((value) => value === "");

/** One table of a file: its body as rows of values, and the steps that change it. */
export class FileTable {
  private constructor(
    readonly sheet: Worksheet,
    private readonly model: Model,
  ) {}

  static find(book: Workbook, name: string): FileTable | null {
    for (const sheet of book.worksheets)
      for (const table of sheet.getTables())
        if (sameWord(table.name, name)) return new FileTable(sheet, table.model);
    return null;
  }

  static get(book: Workbook, name: string): FileTable {
    const table = FileTable.find(book, name);
    if (!table) throw new PortError("missing", sentences.noTable(name));
    return table;
  }

  get name(): string {
    return this.model.name;
  }

  get headers(): string[] {
    return this.model.columns.map(({ name }) => name);
  }

  /** Header and body. */
  get area(): Area {
    return readArea(this.model.tableRef ?? "")!;
  }

  private get bodyRows(): number {
    return this.area.bottom - this.area.top;
  }

  private cell(row: number, column: number): Cell {
    return this.sheet.getCell(this.area.top + 1 + row, this.area.left + column);
  }

  private rowValues(row: number): CellValue[] {
    return this.headers.map((_, column) => fromFile(this.cell(row, column).value));
  }

  read(): TableData {
    const rows = Array.from({ length: this.bodyRows }, (_, row) => this.rowValues(row));
    return { name: this.name, sheet: this.sheet.name, headers: this.headers, rows };
  }

  /** Columns and values of a row given by header; throws where a header is unknown or computed. */
  private placed(row: Row): (readonly [column: number, value: CellValue])[] {
    return Object.entries(row).map(([header, value]) => {
      const column = this.headers.findIndex((known) => sameWord(known, header));
      if (column < 0) throw new PortError("missing", sentences.noColumn(this.name, header));
      if (this.model.columns[column]?.calculatedColumnFormula !== undefined)
        throw new PortError("invalid", sentences.formulaColumn(this.name, header));
      if (typeof value === "number" && !Number.isFinite(value))
        throw new PortError("invalid", sentences.notANumber);
      return [column, value];
    });
  }

  private check(index: number, was: Row): void {
    const here = index < this.bodyRows;
    const now = here ? this.rowValues(index) : [];
    const unchanged = Object.entries(was).every(([header, value]) => {
      const column = this.headers.findIndex((known) => sameWord(known, header));
      return column >= 0 && now[column] !== undefined && sameValue(now[column], value);
    });
    if (!here || !unchanged)
      throw new PortError("changed", sentences.rowChanged(this.name, index + 1));
  }

  /** Rows of the body up to the last one in which something was typed. */
  private filledRows(): number {
    const typed = this.model.columns.map((column) => column.calculatedColumnFormula === undefined);
    for (let row = this.bodyRows - 1; row >= 0; row--)
      if (!blank(this.rowValues(row).filter((_, column) => typed[column]))) return row + 1;
    return 0;
  }

  add(rows: readonly Row[]): number[] {
    const placed = rows.map((row) => this.placed(row));
    const first = this.filledRows();
    this.resize(Math.max(this.bodyRows, first + rows.length));
    placed.forEach((values, index) => {
      for (const [column, value] of values) this.cell(first + index, column).value = toFile(value);
    });
    return rows.map((_, index) => first + index);
  }

  change(changes: readonly { index: number; was: Row; becomes: Row }[]): void {
    const placed = changes.map(({ index, was, becomes }) => {
      this.check(index, was);
      return { index, values: this.placed(becomes) };
    });
    for (const { index, values } of placed)
      for (const [column, value] of values) this.cell(index, column).value = toFile(value);
  }

  remove(rows: readonly { index: number; was: Row }[]): void {
    for (const { index, was } of rows) this.check(index, was);
    const gone = new Set(rows.map(({ index }) => index));
    const kept = this.read().rows.filter((_, index) => !gone.has(index));
    const before = this.bodyRows;
    kept.forEach((values, row) => this.putTyped(row, values));
    for (let row = kept.length; row < before; row++) this.putTyped(row, null);
    this.resize(Math.max(kept.length, 1));
  }

  /** Typed values of a row; null clears it, formulas included. */
  private putTyped(row: number, values: readonly CellValue[] | null): void {
    this.model.columns.forEach(({ calculatedColumnFormula }, column) => {
      const cell = this.cell(row, column);
      if (values === null) cell.value = null;
      else if (calculatedColumnFormula === undefined) cell.value = toFile(values[column] ?? "");
    });
  }

  /** Makes the body so many rows long; new rows take the look and the formulas of the first one. */
  private resize(bodyRows: number): void {
    const before = this.bodyRows;
    const { top, left, right } = this.area;
    for (let row = before; row < bodyRows; row++)
      for (let column = left; column <= right; column++)
        if (fromFile(this.sheet.getCell(top + 1 + row, column).value) !== "")
          throw new PortError("invalid", sentences.noRoom(this.name));
    this.model.tableRef = areaRef({ ...this.area, bottom: top + bodyRows });
    this.model.autoFilterRef = this.model.tableRef;
    for (let row = Math.min(before, bodyRows - 1); row < bodyRows; row++)
      this.model.columns.forEach(({ calculatedColumnFormula }, column) => {
        const cell = this.cell(row, column);
        if (row > 0) cell.style = this.cell(0, column).style;
        if (calculatedColumnFormula !== undefined && !cell.formula)
          cell.value = { formula: calculatedColumnFormula };
      });
    this.model.rows = Array.from({ length: bodyRows }, () => []);
  }
}
