import type { Workbook } from "@cj-tech-master/excelts";
import { cellRef, quotedSheet } from "../a1";
import type { Blueprint, SheetPlan } from "../blueprint/types";
import {
  PortError,
  type BuildReport,
  type CellValue,
  type FormulaCell,
  type Row,
  type RowAt,
  type TableData,
  type WorkbookPort,
} from "../port";
import { sentences } from "../sentences";
import { cellsAt, type CellsAt, fromFile, removeSheet, sheetNamed, toFile } from "./cellValues";
import { callsUs, storedFormula, typedFormula } from "./formulaText";
import { buildMissing } from "./buildMissing";
import { FileTable } from "./fileTable";
import { newBook } from "./bookBytes";
import { renderSheets } from "./render";

/**
 * A workbook in a file, held in memory: the port over it, without a calculation of its own.
 * Formulas keep their last values until something that calculates has been over them.
 */
export class FilePort implements WorkbookPort {
  readonly kind = "file";
  readonly undoable = false;
  private readonly listeners = new Set<() => void>();

  constructor(readonly book: Workbook) {}

  /** A new workbook with the sheets of a blueprint. */
  static create(blueprint: Blueprint): FilePort {
    const book = newBook();
    renderSheets(book, blueprint.sheets);
    return new FilePort(book);
  }

  async sheetNames(): Promise<string[]> {
    return this.book.worksheets.map(({ name }) => name);
  }

  async tableNames(): Promise<string[]> {
    return this.book.worksheets.flatMap((sheet) => sheet.getTables().map(({ name }) => name));
  }

  async readTable(name: string): Promise<TableData | null> {
    return FileTable.find(this.book, name)?.read() ?? null;
  }

  async readRange(ref: string): Promise<CellValue[][] | null> {
    const cells = cellsAt(this.book, ref);
    return (
      cells && mapCells(cells, (row, column) => fromFile(cells.sheet.getCell(row, column).value))
    );
  }

  async addRows(table: string, rows: readonly Row[]): Promise<number[]> {
    return this.changing(() => FileTable.get(this.book, table).add(rows));
  }

  async changeRows(
    table: string,
    changes: readonly (RowAt & { readonly becomes: Row })[],
  ): Promise<void> {
    this.changing(() => FileTable.get(this.book, table).change(changes));
  }

  async removeRows(table: string, rows: readonly RowAt[]): Promise<void> {
    this.changing(() => FileTable.get(this.book, table).remove(rows));
  }

  async writeRange(ref: string, values: readonly (readonly CellValue[])[]): Promise<void> {
    const cells = cellsAt(this.book, ref);
    if (!cells) throw new PortError("missing", sentences.noRange(ref));
    const { top, left, bottom, right } = cells.area;
    const [rows, columns] = [bottom - top + 1, right - left + 1];
    if (values.length !== rows || values.some((row) => row.length !== columns))
      throw new PortError("invalid", sentences.wrongShape(ref, rows, columns));
    if (values.flat().some((value) => typeof value === "number" && !Number.isFinite(value)))
      throw new PortError("invalid", sentences.notANumber);
    this.changing(() => {
      mapCells(cells, (row, column) => {
        cells.sheet.getCell(row, column).value = toFile(values[row - top]![column - left]!);
      });
    });
  }

  async build(blueprint: Blueprint): Promise<BuildReport> {
    return this.changing(() => buildMissing(this.book, blueprint));
  }

  async replaceSheet(plan: SheetPlan): Promise<void> {
    this.changing(() => {
      const old = sheetNamed(this.book, plan.name);
      if (old) removeSheet(this.book, old);
      renderSheets(this.book, [plan]);
      if (old) sheetNamed(this.book, plan.name)!.orderNo = old.orderNo;
    });
  }

  async ourFormulas(): Promise<FormulaCell[]> {
    const found: FormulaCell[] = [];
    for (const sheet of this.book.worksheets)
      sheet.eachRow((row) =>
        row.eachCell((cell) => {
          if (cell.formula === undefined || !callsUs(cell.formula)) return;
          const at = cellRef({ row: Number(cell.row), column: Number(cell.col) });
          found.push({
            ref: `${quotedSheet(sheet.name)}!${at}`,
            formula: typedFormula(cell.formula),
          });
        }),
      );
    return found;
  }

  /** A file keeps formulas as they are stored; writing them anew brings any other spelling to that form. */
  async repairFormulas(
    progress?: (done: number, total: number) => void,
    stop?: AbortSignal,
  ): Promise<number> {
    const formulas = await this.ourFormulas();
    let done = 0;
    for (const { ref, formula } of formulas) {
      if (stop?.aborted) break;
      const { sheet, area } = cellsAt(this.book, ref)!;
      const cell = sheet.getCell(area.top, area.left);
      const value = cell.value;
      if (typeof value === "object" && value !== null && "formula" in value)
        cell.value = { ...value, formula: storedFormula(formula) };
      progress?.(++done, formulas.length);
    }
    return done;
  }

  async recalculate(): Promise<void> {
    throw new PortError("unsupported", sentences.fileCannotCalculate);
  }

  onChange(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  async show(ref: string): Promise<void> {
    const cells = cellsAt(this.book, ref);
    if (!cells) throw new PortError("missing", sentences.noRange(ref));
    const { sheet, area } = cells;
    const at = cellRef({ row: area.top, column: area.left });
    sheet.views = [{ state: "normal", ...sheet.views[0], activeCell: at }];
  }

  /** Does a change and tells the listeners once it is done, in a later tick. */
  private changing<Result>(change: () => Result): Result {
    const result = change();
    if (this.listeners.size > 0)
      queueMicrotask(() => this.listeners.forEach((listener) => listener()));
    return result;
  }
}

function mapCells<Result>(
  { area }: CellsAt,
  each: (row: number, column: number) => Result,
): Result[][] {
  return Array.from({ length: area.bottom - area.top + 1 }, (_, down) =>
    Array.from({ length: area.right - area.left + 1 }, (_, right) =>
      each(area.top + down, area.left + right),
    ),
  );
}
