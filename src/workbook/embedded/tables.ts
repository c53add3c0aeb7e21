/** Tables of the embedded workbook: finding them, and the changes that make them longer or shorter. */
import type { ICellData, IRange, Worksheet } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { TableManager, type ITableInfo } from "@univerjs/sheets-table";
import { PortError } from "../port";
import { sentences } from "../sentences";
import { formulaCell, isBlankCell } from "./cells";
import { dressCells, type Cells } from "./changeCells";
import { setRowCount } from "./changeSheets";
import { resizeTable } from "./changeTables";
import type { Engine } from "./engine";
import { stretchLists } from "./stretchLists";
import type { Grid } from "./grid";
import type { Change } from "./step";

export interface FoundTable {
  readonly id: string;
  readonly name: string;
  readonly sheet: Worksheet;
  /** Header and body. */
  readonly range: IRange;
  readonly headers: readonly string[];
}

const SPARE_ROWS = 200;

export class Tables {
  private readonly manager: TableManager;
  private readonly lexer: LexerTreeBuilder;

  constructor(
    private readonly engine: Engine,
    private readonly grid: Grid,
  ) {
    this.manager = engine.injector.get(TableManager);
    this.lexer = engine.injector.get(LexerTreeBuilder);
  }

  all(): FoundTable[] {
    return this.manager.getTableList(this.engine.unitId).flatMap((info) => this.found(info));
  }

  find(name: string): FoundTable | null {
    return this.all().find((table) => table.name.toLowerCase() === name.toLowerCase()) ?? null;
  }

  require(name: string): FoundTable {
    const table = this.find(name);
    if (!table) throw new PortError("missing", sentences.noTable(name));
    return table;
  }

  /** The table whose body or header holds a cell. */
  around(sheetId: string, row: number, column: number): FoundTable | null {
    const holds = ({ sheet, range }: FoundTable): boolean =>
      sheet.getSheetId() === sheetId &&
      row >= range.startRow &&
      row <= range.endRow &&
      column >= range.startColumn &&
      column <= range.endColumn;
    return this.all().find(holds) ?? null;
  }

  private found(info: ITableInfo): FoundTable[] {
    const sheet = this.engine.workbook.getSheetBySheetId(info.subUnitId);
    if (!sheet) return [];
    const { range, columns } = info;
    const headers = columns.map((column, offset) => {
      const shown = this.grid.value(sheet, range.startRow, range.startColumn + offset);
      return shown === "" ? column.displayName : String(shown);
    });
    return [{ id: info.id, name: info.name, sheet, range, headers }];
  }

  /** Whether a body row holds nothing but formulas and blanks. */
  isBlankRow({ sheet, range }: FoundTable, row: number): boolean {
    for (let column = range.startColumn; column <= range.endColumn; column++) {
      const cell = this.grid.stored(sheet, row, column);
      if (!isBlankCell(cell) && !cell?.f && !cell?.si) return false;
    }
    return true;
  }

  /** The sheet row of the last body row that is not blank; the header's where all are. */
  lastFilledRow(table: FoundTable): number {
    let row = table.range.endRow;
    while (row > table.range.startRow && this.isBlankRow(table, row)) row -= 1;
    return row;
  }

  /**
   * Makes a table longer: its range, its lists and bars, and in the new rows the styles and column
   * formulas of the row above. Cells that were typed there already keep what was typed.
   */
  lengthen(table: FoundTable, endRow: number, typed: Cells = {}): Change[] {
    const { sheet, range } = table;
    if (endRow <= range.endRow) return [];
    const longer = { ...range, endRow };
    const sheetId = sheet.getSheetId();
    return [
      ...this.room(sheet, endRow),
      resizeTable(this.engine, sheetId, table.id, range, longer),
      ...stretchLists(this.engine, sheetId, range, endRow),
      dressCells(this.engine, sheetId, this.newRows(table, endRow), typed),
    ];
  }

  /** Makes a table shorter; the rows that it leaves behind are cleared. */
  shorten(table: FoundTable, endRow: number): Change[] {
    const { sheet, range } = table;
    if (endRow >= range.endRow) return [];
    const sheetId = sheet.getSheetId();
    return [
      resizeTable(this.engine, sheetId, table.id, range, { ...range, endRow }),
      ...stretchLists(this.engine, sheetId, range, endRow),
    ];
  }

  private room(sheet: Worksheet, endRow: number): Change[] {
    const rowCount = sheet.getRowCount();
    if (endRow < rowCount - 1) return [];
    return [setRowCount(this.engine, sheet.getSheetId(), rowCount, endRow + 1 + SPARE_ROWS)];
  }

  private newRows({ sheet, range }: FoundTable, endRow: number): Cells {
    const cells: Record<number, Record<number, ICellData>> = {};
    for (let row = range.endRow + 1; row <= endRow; row++) {
      const made: Record<number, ICellData> = (cells[row] = {});
      for (let column = range.startColumn; column <= range.endColumn; column++) {
        const above = this.grid.stored(sheet, range.endRow, column);
        const formula = this.grid.formula(sheet, range.endRow, column);
        made[column] = {
          ...(formula
            ? formulaCell(this.lexer.moveFormulaRefOffset(formula, 0, row - range.endRow))
            : {}),
          ...(above?.s ? { s: above.s } : {}),
        };
      }
    }
    return cells;
  }
}
