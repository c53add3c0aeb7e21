import "../../../src/page/iteratorSome";
import {
  RedoCommand,
  UndoCommand,
  type ICellData,
  type Nullable,
  type Worksheet,
} from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { SetRangeValuesCommand } from "@univerjs/sheets";
import type { Blueprint } from "../../../src/workbook/blueprint/types";
import { EmbeddedWorkbook } from "../../../src/workbook/embedded";
import type { FunctionsBundle } from "../../../src/workbook/embedded/engine";
import { openWorkbook, type OpenWorkbook } from "../../../src/workbook/embedded/open";
import type { CellValue } from "../../../src/workbook/port";

export type Typed = string | number | null;

/** An embedded workbook as a person has it: cells are typed into, and undone; all can be read at once. */
export class BookInHand {
  readonly port: EmbeddedWorkbook;

  private constructor(readonly opened: OpenWorkbook) {
    this.port = new EmbeddedWorkbook(opened.engine, opened.calculation);
  }

  static async open(blueprint: Blueprint, bundle: FunctionsBundle): Promise<BookInHand> {
    const book = new BookInHand(openWorkbook(blueprint, { bundle }));
    await book.settled();
    return book;
  }

  settled(): Promise<void> {
    return this.opened.calculation.settled();
  }

  close(): void {
    this.opened.engine.univer.dispose();
  }

  sheet(name: string): Worksheet {
    return this.opened.engine.workbook.getSheetBySheetName(name)!;
  }

  run(command: string, params: object = {}): Promise<boolean> {
    return this.opened.engine.commands.executeCommand(command, params);
  }

  undo(): Promise<boolean> {
    return this.run(UndoCommand.id);
  }

  redo(): Promise<boolean> {
    return this.run(RedoCommand.id);
  }

  /** Types into a cell as the grid's editor does: a formula where it starts with "=". */
  async typeAt(sheet: string, row: number, column: number, typed: Typed): Promise<void> {
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    const isFormula = typeof typed === "string" && typed.startsWith("=");
    const value = isFormula ? { f: typed, v: null, p: null } : { v: typed, f: null, p: null };
    const subUnitId = this.sheet(sheet).getSheetId();
    const { unitId } = this.opened.engine;
    await this.run(SetRangeValuesCommand.id, { unitId, subUnitId, range, value });
  }

  /** Types several cells, each as "A1" of a sheet, one after the other without waiting. */
  async type(sheet: string, cells: Readonly<Record<string, Typed>>): Promise<void> {
    for (const [ref, typed] of Object.entries(cells)) {
      const [, letter, row] = /^([A-Z])(\d+)$/.exec(ref)!;
      await this.typeAt(sheet, Number(row) - 1, letter!.charCodeAt(0) - 65, typed);
    }
  }

  async values(sheet: string, ...refs: readonly string[]): Promise<CellValue[]> {
    const read = refs.map((ref) => this.port.readRange(`${sheet}!${ref}:${ref}`));
    return (await Promise.all(read)).map((cells) => cells![0]![0]!);
  }

  /** What every cell of every sheet shows, blank ones left out. */
  shown(): Record<string, unknown> {
    const { injector, workbook, unitId } = this.opened.engine;
    const spilled = injector.get(FormulaDataModel).getArrayFormulaCellData()[unitId] ?? {};
    const all: Record<string, unknown> = {};
    for (const sheet of workbook.getSheets()) {
      const put = (row: number, column: number, value: unknown): void => {
        if (value !== undefined && value !== null && value !== "")
          all[`${sheet.getName()} ${row}:${column}`] = value;
      };
      for (const [row, cells] of Object.entries(spilled[sheet.getSheetId()] ?? {}))
        for (const [column, cell] of Object.entries(cells ?? {}))
          put(Number(row), Number(column), (cell as Nullable<ICellData>)?.v);
      sheet.getCellMatrix().forValue((row, column, cell) => put(row, column, cell?.v));
    }
    return all;
  }
}
