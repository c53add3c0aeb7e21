/** What a person types or pastes: short forms of references are written out, and a table grows by the row below it. */
import type { ICellData, ICommandInfo, IMutationInfo, IRange, Worksheet } from "@univerjs/core";
import {
  SetRangeValuesCommand,
  SheetInterceptorService,
  type ISetRangeValuesCommandParams,
  type ISetRangeValuesMutationParams,
} from "@univerjs/sheets";
import { isBlankCell } from "./grid";
import { type Cells, type Change, takeStep } from "./changes";
import { type Engine, toEngine } from "./engine";
import type { FoundTable, Tables } from "./tables";

/** Every cell of what a command is to write, with its place. */
function eachCell(
  { value, range }: ISetRangeValuesCommandParams,
  visit: (cell: ICellData, row: number, column: number) => void,
): void {
  const { startRow, startColumn } = range ?? { startRow: 0, startColumn: 0 };
  if (Array.isArray(value))
    value.forEach((cells, down) =>
      cells.forEach((cell, right) => visit(cell, startRow + down, startColumn + right)),
    );
  else if (value && ("f" in value || "v" in value || "p" in value))
    visit(value as ICellData, startRow, startColumn);
  else
    for (const [row, cells] of Object.entries((value ?? {}) as Cells))
      for (const [column, cell] of Object.entries(cells ?? {}))
        if (cell) visit(cell, Number(row), Number(column));
}

function writeOut(engine: Engine, tables: Tables, command: Readonly<ICommandInfo>): void {
  if (command.id !== SetRangeValuesCommand.id) return;
  const params = command.params as ISetRangeValuesCommandParams;
  const sheetId = params.subUnitId ?? engine.workbook.getActiveSheet().getSheetId();
  const names = tables.all();
  eachCell(params, (cell, row, column) => {
    if (cell.f) cell.f = toEngine(cell.f, names, tables.around(sheetId, row, column));
  });
}

/** The last of the rows right below a table in which something was written. */
function rowsBelow({ range }: FoundTable, written: Cells): number {
  const isWritten = (row: number): boolean =>
    Object.entries(written[row] ?? {}).some(
      ([column, cell]) =>
        Number(column) >= range.startColumn &&
        Number(column) <= range.endColumn &&
        !isBlankCell(cell),
    );
  let end = range.endRow;
  while (isWritten(end + 1)) end += 1;
  return end;
}

function growth(tables: Tables, { subUnitId, cellValue }: ISetRangeValuesMutationParams): Change[] {
  const written = (cellValue ?? {}) as Cells;
  return tables
    .all()
    .filter(({ sheet }) => sheet.getSheetId() === subUnitId)
    .flatMap((table) => tables.lengthen(table, rowsBelow(table, written), written));
}

/** Takes rows into a table that came right below it in another way than by typing, as a step of its own. */
export function takeIn(engine: Engine, tables: Tables, sheet: Worksheet, range: IRange): void {
  const cellValue: Record<number, Record<number, ICellData>> = {};
  sheet.getCellMatrix().forValue((row, column, cell) => {
    const inside =
      row >= range.startRow &&
      row <= range.endRow &&
      column >= range.startColumn &&
      column <= range.endColumn;
    if (inside && cell) (cellValue[row] ??= {})[column] = cell;
  });
  const params = { unitId: engine.unitId, subUnitId: sheet.getSheetId(), cellValue };
  takeStep(engine, growth(tables, params), "Extending the table");
}

/** Starts both for whatever is typed from now on. The growth is part of the step that typing made. */
export function followTyping(engine: Engine, tables: Tables): void {
  engine.commands.beforeCommandExecuted((command) => writeOut(engine, tables, command));
  engine.injector.get(SheetInterceptorService).interceptCommand({
    getMutations(command): { redos: IMutationInfo<object>[]; undos: IMutationInfo<object>[] } {
      if (command.id !== SetRangeValuesCommand.id) return { redos: [], undos: [] };
      const changes = growth(tables, command.params as ISetRangeValuesMutationParams);
      return {
        redos: changes.map(({ redo }) => redo),
        undos: changes.map(({ undo }) => undo).reverse(),
      };
    },
  });
}
