/**
 * A workbook in memory for tests of the pane's model and actions: the tables and named values of a
 * blueprint, no formulas. It keeps the port's conventions on rows (guards, indexes, whole or none).
 */
import type { Blueprint, CellsPlan, TablePlan } from "../../src/workbook/blueprint/types";
import {
  PortError,
  type BuildReport,
  type CellValue,
  type FormulaCell,
  type Row,
  type RowAt,
  type TableData,
  type WorkbookPort,
} from "../../src/workbook/port";

interface Table {
  readonly sheet: string;
  readonly headers: readonly string[];
  rows: CellValue[][];
}

export class MemoryPort implements WorkbookPort {
  readonly kind = "embedded";
  readonly undoable = false;
  readonly tables = new Map<string, Table>();
  readonly ranges = new Map<string, CellValue[][]>();
  readonly sheets: string[] = [];
  /** Thrown by the next writing call, once. */
  failNext: PortError | null = null;
  private readonly listeners = new Set<() => void>();

  constructor(blueprint: Blueprint) {
    this.take(blueprint);
  }

  async sheetNames(): Promise<string[]> {
    return [...this.sheets];
  }

  async tableNames(): Promise<string[]> {
    return [...this.tables.keys()];
  }

  async readTable(name: string): Promise<TableData | null> {
    const found = this.tables.get(name);
    return found ? { name, ...found, rows: found.rows.map((row) => [...row]) } : null;
  }

  async readRange(ref: string): Promise<CellValue[][] | null> {
    return this.ranges.get(ref)?.map((row) => [...row]) ?? null;
  }

  async addRows(name: string, rows: readonly Row[]): Promise<number[]> {
    const table = this.writing(name);
    const filled = table.rows.reduce(
      (last, row, at) => (row.some((cell) => cell !== "") ? at + 1 : last),
      0,
    );
    const made = rows.map((row) =>
      this.laid(
        table,
        row,
        table.headers.map(() => ""),
      ),
    );
    table.rows.splice(filled, made.length, ...made);
    this.tell();
    return rows.map((_, at) => filled + at);
  }

  async changeRows(
    name: string,
    changes: readonly (RowAt & { readonly becomes: Row })[],
  ): Promise<void> {
    const table = this.writing(name);
    changes.forEach((change) => this.guard(table, change));
    for (const { index, becomes } of changes)
      table.rows[index] = this.laid(table, becomes, table.rows[index]!);
    this.tell();
  }

  async removeRows(name: string, rows: readonly RowAt[]): Promise<void> {
    const table = this.writing(name);
    rows.forEach((row) => this.guard(table, row));
    const gone = new Set(rows.map(({ index }) => index));
    table.rows = table.rows.filter((_, at) => !gone.has(at));
    this.tell();
  }

  async writeRange(ref: string, values: readonly (readonly CellValue[])[]): Promise<void> {
    this.failing();
    if (!this.ranges.has(ref)) throw new PortError("missing", `There is no range ${ref}.`);
    this.ranges.set(
      ref,
      values.map((row) => [...row]),
    );
    this.tell();
  }

  async build(blueprint: Blueprint): Promise<BuildReport> {
    this.failing();
    const kept = blueprint.sheets
      .map(({ name }) => name)
      .filter((name) => this.sheets.includes(name));
    this.take(blueprint);
    this.tell();
    return { made: this.sheets.filter((name) => !kept.includes(name)), kept };
  }

  async replaceSheet(sheet: Blueprint["sheets"][number]): Promise<void> {
    this.failing();
    if (!this.sheets.includes(sheet.name)) this.sheets.push(sheet.name);
    this.tell();
  }

  async ourFormulas(): Promise<FormulaCell[]> {
    return [];
  }

  async repairFormulas(): Promise<number> {
    this.failing();
    return 0;
  }

  async recalculate(): Promise<void> {
    this.failing();
  }

  onChange(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  async show(): Promise<void> {}

  /** What a person's own edit of the sheet does. */
  edit(name: string, index: number, column: string, value: CellValue): void {
    const table = this.tables.get(name)!;
    table.rows[index]![table.headers.indexOf(column)] = value;
    this.tell();
  }

  private take({ sheets }: Blueprint): void {
    for (const sheet of sheets) {
      if (this.sheets.includes(sheet.name)) continue;
      this.sheets.push(sheet.name);
      for (const block of sheet.blocks) {
        if (block.kind === "table") this.tables.set(block.name, tableOf(sheet.name, block));
        if (block.kind === "cells" && block.name) this.ranges.set(block.name, gridOf(block));
      }
    }
  }

  private tell(): void {
    this.listeners.forEach((listener) => listener());
  }

  private failing(): void {
    const failure = this.failNext;
    this.failNext = null;
    if (failure) throw failure;
  }

  private writing(name: string): Table {
    this.failing();
    const table = this.tables.get(name);
    if (!table) throw new PortError("missing", `There is no table ${name}.`);
    return table;
  }

  private laid({ headers }: Table, row: Row, before: readonly CellValue[]): CellValue[] {
    const cells = [...before];
    for (const [header, value] of Object.entries(row)) {
      const at = headers.indexOf(header);
      if (at < 0) throw new PortError("missing", `There is no column ${header}.`);
      cells[at] = value;
    }
    return cells;
  }

  private guard(table: Table, { index, was }: RowAt): void {
    const row = table.rows[index];
    const same =
      row &&
      Object.entries(was).every(([header, value]) => row[table.headers.indexOf(header)] === value);
    if (!same) throw new PortError("changed", `Row ${index + 1} has changed meanwhile.`);
  }
}

const tableOf = (sheet: string, plan: TablePlan): Table => {
  const headers = plan.columns.map(({ header }) => header);
  const blank = (): CellValue[] => headers.map(() => "");
  const rows = plan.rows.map((row) => headers.map((_, at) => row[at] ?? ""));
  while (rows.length < (plan.least ?? 0)) rows.push(blank());
  return { sheet, headers, rows };
};

const gridOf = ({ values }: CellsPlan): CellValue[][] => values.map((row) => [...row]);
