/**
 * A workbook as plain data: values, tables, names and the text of formulas, which are kept and never
 * worked out. All of it can be cloned into a browser's database as it is.
 */
import { type Area, readSheetArea } from "../a1";
import { blockArea, bodyRows } from "../blueprint/parts";
import type { SheetPlan, TablePlan } from "../blueprint/types";
import {
  type CellValue,
  PortError,
  type Row,
  type RowAt,
  sameCell,
  sameWord,
  type TableData,
} from "../port";
import { sentences } from "../sentences";

export interface LightTable {
  readonly name: string;
  /** Header and body. */
  area: Area;
  /** Formula of each column that has one, as typed. */
  readonly formulas: readonly (string | null)[];
}

export interface LightSheet {
  readonly name: string;
  /** Values by row and column, both from 0; what is missing is blank. */
  readonly rows: CellValue[][];
  readonly formulas: { readonly row: number; readonly column: number; readonly text: string }[];
  readonly tables: LightTable[];
}

export interface LightName {
  readonly name: string;
  readonly sheet: string;
  readonly area: Area;
}

export interface LightBook {
  readonly sheets: LightSheet[];
  readonly names: LightName[];
}

export const sheetNamed = (book: LightBook, name: string): LightSheet | undefined =>
  book.sheets.find((sheet) => sameWord(sheet.name, name));

const valueAt = (sheet: LightSheet, row: number, column: number): CellValue =>
  sheet.rows[row - 1]?.[column - 1] ?? "";

function put(sheet: LightSheet, row: number, column: number, value: CellValue): void {
  const cells = (sheet.rows[row - 1] ??= []);
  cells[column - 1] = value;
}

const valuesIn = (sheet: LightSheet, { top, left, bottom, right }: Area): CellValue[][] =>
  Array.from({ length: bottom - top + 1 }, (_, down) =>
    Array.from({ length: right - left + 1 }, (_, along) =>
      valueAt(sheet, top + down, left + along),
    ),
  );

const checkStorable = (value: CellValue): void => {
  if (typeof value === "number" && !Number.isFinite(value))
    throw new PortError("invalid", sentences.notANumber);
};

// Sheets out of a blueprint.

/** The values of a plan, without its looks. */
export function sheetOf(plan: SheetPlan): { sheet: LightSheet; names: LightName[] } {
  const sheet: LightSheet = { name: plan.name, rows: [], formulas: [], tables: [] };
  const names: LightName[] = [];
  for (const block of plan.blocks) addBlock(sheet, names, block);
  return { sheet, names };
}

function addBlock(sheet: LightSheet, names: LightName[], block: SheetPlan["blocks"][number]): void {
  const area = blockArea(block);
  if (block.kind === "table") return addTable(sheet, block, area);
  if (block.kind === "cells")
    block.values.forEach((row, down) =>
      row.forEach((value, along) => put(sheet, area.top + down, area.left + along, value)),
    );
  else sheet.formulas.push({ row: area.top, column: area.left, text: block.formula });
  if (block.name !== undefined) names.push({ name: block.name, sheet: sheet.name, area });
}

function addTable(sheet: LightSheet, plan: TablePlan, area: Area): void {
  plan.columns.forEach(({ header, formula }, along) => {
    put(sheet, area.top, area.left + along, header);
    if (formula !== undefined) return;
    plan.rows.forEach((row, down) =>
      put(sheet, area.top + 1 + down, area.left + along, row[along] ?? ""),
    );
  });
  sheet.tables.push({
    name: plan.name,
    area: { ...area, bottom: area.top + bodyRows(plan) },
    formulas: plan.columns.map(({ formula }) => formula ?? null),
  });
}

/** Whether the workbook has what a block would make. */
export const hasBlock = (book: LightBook, block: SheetPlan["blocks"][number]): boolean =>
  block.name !== undefined &&
  (block.kind === "table"
    ? book.sheets.some(({ tables }) => tables.some(({ name }) => sameWord(name, block.name)))
    : book.names.some(({ name }) => sameWord(name, block.name!)));

/** Puts a block on a sheet that is there, where its place is free; answers whether it was. */
export function addMissingBlock(
  book: LightBook,
  sheet: LightSheet,
  block: SheetPlan["blocks"][number],
): boolean {
  if (
    valuesIn(sheet, blockArea(block))
      .flat()
      .some((value) => value !== "")
  )
    return false;
  addBlock(sheet, book.names, block);
  return true;
}

/** Takes a sheet away, with its names; answers where it was. */
export function removeSheet(book: LightBook, name: string): number {
  const at = book.sheets.findIndex((sheet) => sameWord(sheet.name, name));
  if (at >= 0) book.sheets.splice(at, 1);
  const kept = book.names.filter(({ sheet }) => !sameWord(sheet, name));
  book.names.splice(0, book.names.length, ...kept);
  return at;
}

// Ranges.

export interface LightRange {
  readonly sheet: LightSheet;
  readonly area: Area;
}

/** The cells behind "Log!A1:C9" or a defined name; null where there are none. */
export function rangeAt(book: LightBook, ref: string): LightRange | null {
  const named = book.names.find(({ name }) => sameWord(name, ref));
  const place = named ?? readSheetArea(ref);
  const sheet = place && sheetNamed(book, place.sheet);
  return sheet ? { sheet, area: place.area } : null;
}

export const readRange = ({ sheet, area }: LightRange): CellValue[][] => valuesIn(sheet, area);

export function writeRange(
  book: LightBook,
  ref: string,
  values: readonly (readonly CellValue[])[],
): void {
  const range = rangeAt(book, ref);
  if (!range) throw new PortError("missing", sentences.noRange(ref));
  const { top, left, bottom, right } = range.area;
  const [rows, columns] = [bottom - top + 1, right - left + 1];
  if (values.length !== rows || values.some((row) => row.length !== columns))
    throw new PortError("invalid", sentences.wrongShape(ref, rows, columns));
  values.flat().forEach(checkStorable);
  values.forEach((row, down) =>
    row.forEach((value, along) => put(range.sheet, top + down, left + along, value)),
  );
}

// Tables.

/** A table of the workbook and the steps that change it; each does all of its work or none. */
export class TableOfBook {
  private constructor(
    readonly sheet: LightSheet,
    private readonly table: LightTable,
  ) {}

  static find(book: LightBook, name: string): TableOfBook | null {
    for (const sheet of book.sheets)
      for (const table of sheet.tables)
        if (sameWord(table.name, name)) return new TableOfBook(sheet, table);
    return null;
  }

  static get(book: LightBook, name: string): TableOfBook {
    const table = TableOfBook.find(book, name);
    if (!table) throw new PortError("missing", sentences.noTable(name));
    return table;
  }

  private get headers(): string[] {
    const { top, left, right } = this.table.area;
    return valuesIn(this.sheet, { top, left, bottom: top, right })[0]!.map(String);
  }

  private get bodyRows(): number {
    return this.table.area.bottom - this.table.area.top;
  }

  read(): TableData {
    const [headers = [], ...rows] = valuesIn(this.sheet, this.table.area);
    return {
      name: this.table.name,
      sheet: this.sheet.name,
      headers: headers.map(String),
      rows,
    };
  }

  /** Whether a column, from 0, holds what was typed and no formula. */
  isTyped(column: number): boolean {
    return this.table.formulas[column] === null;
  }

  add(rows: readonly Row[]): number[] {
    const placed = rows.map((row) => this.placed(row));
    const first = this.filledRows();
    this.resize(Math.max(this.bodyRows, first + rows.length));
    placed.forEach((values, down) => this.write(first + down, values));
    return rows.map((_, down) => first + down);
  }

  change(changes: readonly (RowAt & { readonly becomes: Row })[]): void {
    const placed = changes.map((change) => {
      this.check(change);
      return { index: change.index, values: this.placed(change.becomes) };
    });
    for (const { index, values } of placed) this.write(index, values);
  }

  remove(rows: readonly RowAt[]): void {
    rows.forEach((row) => this.check(row));
    const gone = new Set(rows.map(({ index }) => index));
    const kept = this.read().rows.filter((_, index) => !gone.has(index));
    const { top, left } = this.table.area;
    for (let row = 0; row < this.bodyRows; row++)
      this.table.formulas.forEach((_, along) =>
        put(this.sheet, top + 1 + row, left + along, kept[row]?.[along] ?? ""),
      );
    this.resize(Math.max(kept.length, 1));
  }

  private placed(row: Row): (readonly [column: number, value: CellValue])[] {
    const { headers } = this;
    return Object.entries(row).map(([header, value]) => {
      const column = headers.findIndex((known) => sameWord(known, header));
      if (column < 0) throw new PortError("missing", sentences.noColumn(this.table.name, header));
      if (this.table.formulas[column] !== null)
        throw new PortError("invalid", sentences.formulaColumn(this.table.name, header));
      checkStorable(value);
      return [column, value];
    });
  }

  private check({ index, was }: RowAt): void {
    const { headers } = this;
    const { top, left } = this.table.area;
    const unchanged =
      index < this.bodyRows &&
      Object.entries(was).every(([header, value]) => {
        const column = headers.findIndex((known) => sameWord(known, header));
        const now = valueAt(this.sheet, top + 1 + index, left + column);
        return column >= 0 && sameCell(now, value);
      });
    if (!unchanged)
      throw new PortError("changed", sentences.rowChanged(this.table.name, index + 1));
  }

  /** Rows of the body up to the last one in which something was typed. */
  private filledRows(): number {
    const { top, left } = this.table.area;
    for (let row = this.bodyRows; row > 0; row--)
      if (
        this.table.formulas.some(
          (formula, along) =>
            formula === null && valueAt(this.sheet, top + row, left + along) !== "",
        )
      )
        return row;
    return 0;
  }

  private write(index: number, values: readonly (readonly [number, CellValue])[]): void {
    const { top, left } = this.table.area;
    for (const [along, value] of values) put(this.sheet, top + 1 + index, left + along, value);
  }

  private resize(rows: number): void {
    const { area } = this.table;
    const under = { ...area, top: area.bottom + 1, bottom: area.top + rows };
    if (
      under.bottom >= under.top &&
      valuesIn(this.sheet, under)
        .flat()
        .some((value) => value !== "")
    )
      throw new PortError("invalid", sentences.noRoom(this.table.name));
    this.table.area = { ...area, bottom: area.top + rows };
  }
}
