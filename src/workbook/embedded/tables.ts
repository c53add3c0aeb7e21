/** Tables of the embedded workbook: finding them, and the changes that make them longer or shorter. */
import {
  BorderStyleTypes,
  generateRandomId,
  type ICellData,
  type IRange,
  type Worksheet,
} from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { RangeThemeStyle, SheetRangeThemeModel } from "@univerjs/sheets";
import {
  AddSheetTableMutation,
  DeleteSheetTableMutation,
  type ITableInfo,
  SetSheetTableMutation,
  TableManager,
} from "@univerjs/sheets-table";
import { PortError } from "../port";
import { sentences } from "../sentences";
import { type Cells, change, type Change, dressCells, setRowCount } from "./changes";
import type { Engine } from "./engine";
import { formulaCell, type Grid, isBlankCell } from "./grid";
import type { RenderedTable } from "./renderSheet";
import { stretchLists } from "./stretchLists";

// Our look for tables: a grey header and thin lines, no stripes that shout.

export const TABLE_LOOK = "carrybook-table";

const line = { s: BorderStyleTypes.THIN, cl: { rgb: "#c9d1d4" } };

/** Makes the look known to the engine, which finds a table's look by its name. */
export function registerTableLook({ injector }: Pick<Engine, "injector">): void {
  const look = new RangeThemeStyle(TABLE_LOOK, {
    headerRowStyle: { bd: { t: line, b: line } },
    secondRowStyle: { bg: { rgb: "#f6f8f8" } },
    lastRowStyle: { bd: { b: line } },
  });
  injector.get(SheetRangeThemeModel).registerDefaultRangeTheme(look);
}

// Changes of tables.

export function addTable({ unitId }: Engine, subUnitId: string, table: RenderedTable): Change {
  const tableId = generateRandomId();
  const options = { tableStyleId: TABLE_LOOK, showHeader: true };
  return change(
    AddSheetTableMutation.id,
    { unitId, subUnitId, tableId, ...table, options },
    DeleteSheetTableMutation.id,
    { unitId, subUnitId, tableId },
  );
}

export function removeTable({ unitId, injector }: Engine, tableId: string): Change {
  const { id, name, range, subUnitId, columns } = injector
    .get(TableManager)
    .getTableById(unitId, tableId)!
    .getTableInfo();
  const again = {
    ...{ unitId, subUnitId, tableId: id, name, range },
    header: columns.map((column) => column.displayName),
    options: { tableStyleId: TABLE_LOOK, showHeader: true },
  };
  const gone = { unitId, subUnitId, tableId };
  return change(DeleteSheetTableMutation.id, gone, AddSheetTableMutation.id, again);
}

export function resizeTable(
  { unitId }: Engine,
  subUnitId: string,
  tableId: string,
  before: IRange,
  newRange: IRange,
): Change {
  const id = SetSheetTableMutation.id;
  const at = { unitId, subUnitId, tableId };
  return change(id, { ...at, config: { updateRange: { newRange } } }, id, {
    ...at,
    config: { updateRange: { newRange: before } },
  });
}

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
