/** The port over the embedded workbook: plain values in and out, one undo step a writing call. */
import type { IRange, Worksheet } from "@univerjs/core";
import { IFunctionService, type IFunctionNames } from "@univerjs/engine-formula";
import { areaRef } from "./a1";
import type { Blueprint, SheetPlan } from "./blueprint/types";
import { mendSheet, namesOf, raiseSheet, razeSheet } from "./embedded/build";
import { activate, areaOf, formulaCell, Grid, ourCells, type Place, select } from "./embedded/grid";
import type { Calculation } from "./embedded/calculation";
import { type Change, setCells, takeStep, whenChanged } from "./embedded/changes";
import { livePlans } from "./embedded/livePlans";
import type { Engine } from "./embedded/engine";
import { checkedCell, Rows } from "./embedded/rows";
import { Tables } from "./embedded/tables";
import { followTyping, takeIn } from "./embedded/typing";
import { readWhole, replaceWhole } from "./embedded/whole";
import {
  PortError,
  type BuildReport,
  type CellValue,
  type FormulaCell,
  type Progress,
  type Row,
  type RowAt,
  type TableData,
  type WorkbookPort,
} from "./port";
import { sentences } from "./sentences";
import type { WholeBook } from "./wholeBook";

export class EmbeddedWorkbook implements WorkbookPort {
  readonly kind = "embedded";
  readonly undoable = true;
  private readonly grid: Grid;
  private readonly tables: Tables;
  private readonly rows: Rows;

  constructor(
    private readonly engine: Engine,
    private readonly calculation: Calculation,
  ) {
    this.grid = new Grid(engine);
    this.tables = new Tables(engine, this.grid);
    this.rows = new Rows(engine, this.grid, this.tables);
    followTyping(engine, this.tables);
  }

  async sheetNames(): Promise<string[]> {
    return this.engine.workbook.getSheets().map((sheet) => sheet.getName());
  }

  async tableNames(): Promise<string[]> {
    return this.tables.all().map((table) => table.name);
  }

  async readTable(name: string): Promise<TableData | null> {
    const table = this.tables.find(name);
    if (!table) return null;
    const { sheet, headers, range } = table;
    const body = { ...range, startRow: range.startRow + 1 };
    const rows = this.grid.values({ sheet, range: body });
    return { name: table.name, sheet: sheet.getName(), headers, rows };
  }

  async readRange(ref: string): Promise<CellValue[][] | null> {
    const place = this.grid.locate(ref);
    return place && this.grid.values(place);
  }

  async addRows(table: string, rows: readonly Row[]): Promise<number[]> {
    if (rows.length === 0) return [];
    const { changes, indexes } = this.rows.add(this.tables.require(table), rows);
    this.write(changes, "Adding rows");
    return indexes;
  }

  async changeRows(
    table: string,
    changes: readonly (RowAt & { readonly becomes: Row })[],
  ): Promise<void> {
    if (changes.length === 0) return;
    this.write(this.rows.change(this.tables.require(table), changes), "Changing rows");
  }

  async removeRows(table: string, rows: readonly RowAt[]): Promise<void> {
    this.write(this.rows.remove(this.tables.require(table), rows), "Removing rows");
  }

  async writeRange(ref: string, values: readonly (readonly CellValue[])[]): Promise<void> {
    const { sheet, range } = this.locate(ref);
    const height = range.endRow - range.startRow + 1;
    const width = range.endColumn - range.startColumn + 1;
    if (values.length !== height || values.some((row) => row.length !== width))
      throw new PortError("invalid", sentences.wrongShape(ref, height, width));
    const cells = Object.fromEntries(
      values.map((row, down) => [
        range.startRow + down,
        Object.fromEntries(
          row.map((value, right) => [range.startColumn + right, checkedCell(value)]),
        ),
      ]),
    );
    this.write([setCells(this.engine, sheet.getSheetId(), cells)], "Writing");
  }

  async build(blueprint: Blueprint): Promise<BuildReport> {
    const made: string[] = [];
    const kept: string[] = [];
    const changes: Change[] = [];
    let count = this.engine.workbook.getSheets().length;
    for (const plan of blueprint.sheets) {
      const sheet = this.grid.sheet(plan.name);
      if (sheet) {
        const mended = mendSheet(this.engine, this.grid, this.tables, sheet, plan);
        made.push(...mended.made);
        kept.push(...mended.kept);
        changes.push(...mended.changes);
      } else {
        made.push(...namesOf(plan));
        changes.push(...raiseSheet(this.engine, plan, count++));
      }
    }
    this.write(changes, "Building the sheets");
    if (changes.length > 0) await this.calculation.all();
    return { made, kept };
  }

  replaceSheet(plan: SheetPlan): Promise<void> {
    return this.replaceSheets([plan]);
  }

  /** Replaces several sheets in one step; other sheets stay. */
  async replaceSheets(plans: readonly SheetPlan[]): Promise<void> {
    const { workbook } = this.engine;
    const shown = workbook.getActiveSheet().getName();
    let count = workbook.getSheets().length;
    const changes = plans.flatMap((plan) => {
      const old = this.grid.sheet(plan.name);
      const index = old ? workbook.getSheets().indexOf(old) : count++;
      const razed = old ? razeSheet(this.engine, this.grid, this.tables, old) : [];
      return [...razed, ...raiseSheet(this.engine, plan, index)];
    });
    this.write(changes, "Replacing sheets");
    const again = this.grid.sheet(shown);
    if (again) activate(this.engine, again.getSheetId());
    await this.calculation.all();
  }

  /** Rows that were pasted right below a table become part of it. */
  takeIn(sheet: Worksheet, range: IRange): void {
    takeIn(this.engine, this.tables, sheet, range);
  }

  /** The whole workbook as it stands, for a file. */
  plans(): SheetPlan[] {
    return livePlans(this.engine, this.grid, this.tables);
  }

  /** All that the workbook holds, with the values that its formulas have now. */
  whole(): WholeBook {
    return readWhole(this.engine, this.grid, this.tables);
  }

  /** Puts a whole workbook in the place of this one, in one step. */
  async replaceWhole(book: WholeBook): Promise<void> {
    const { workbook } = this.engine;
    this.write(replaceWhole(this.engine, this.grid, this.tables, book), "Opening the workbook");
    const first = workbook.getSheets().find((sheet) => !sheet.isSheetHidden());
    if (first) activate(this.engine, first.getSheetId());
    await this.calculation.all();
  }

  /** The cells that the formula of a cell fills, as "A1:C5"; null where it fills just its own. */
  spillOf(ref: string): string | null {
    const { sheet, range } = this.locate(ref);
    const spill = this.grid.spill(sheet, range.startRow, range.startColumn);
    return spill && areaRef(areaOf(spill));
  }

  /** Whether formulas can be worked out that call a function of this name, in capitals. */
  knowsFunction(name: string): boolean {
    return this.engine.injector.get(IFunctionService).hasExecutor(name as IFunctionNames);
  }

  async ourFormulas(): Promise<FormulaCell[]> {
    return ourCells(this.engine, this.grid).map(({ ref, formula }) => ({ ref, formula }));
  }

  async repairFormulas(progress?: Progress, stop?: AbortSignal): Promise<number> {
    const cells = ourCells(this.engine, this.grid);
    const changes: Change[] = [];
    for (const { place, formula } of cells) {
      if (stop?.aborted) return 0;
      const { startRow, startColumn } = place.range;
      const cell = { [startRow]: { [startColumn]: formulaCell(formula) } };
      changes.push(setCells(this.engine, place.sheet.getSheetId(), cell));
      progress?.(changes.length, cells.length);
    }
    this.write(changes, "Repairing formulas");
    await this.calculation.settled();
    return cells.length;
  }

  recalculate(): Promise<void> {
    return this.calculation.all();
  }

  onChange(listener: () => void): () => void {
    return whenChanged(this.engine, listener);
  }

  async show(ref: string): Promise<void> {
    select(this.engine, this.locate(ref));
  }

  private write(changes: readonly Change[], doing: string): void {
    takeStep(this.engine, changes, doing);
  }

  private locate(ref: string): Place {
    const place = this.grid.locate(ref);
    if (!place) throw new PortError("missing", sentences.noRange(ref));
    return place;
  }
}
