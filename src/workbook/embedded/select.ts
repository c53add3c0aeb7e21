import { SetSelectionsOperation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import type { Engine } from "./engine";
import type { Place } from "./grid";
import { oneCell } from "./ranges";

/** Brings a sheet to the front. */
export function activate({ unitId, commands }: Engine, subUnitId: string): void {
  commands.syncExecuteCommand(SetWorksheetActiveOperation.id, { unitId, subUnitId });
}

/** Brings a range to the front, selected and in sight. */
export function select(engine: Engine, { sheet, range }: Place): void {
  const { unitId, commands } = engine;
  const subUnitId = sheet.getSheetId();
  activate(engine, subUnitId);
  const primary = {
    ...oneCell(range.startRow, range.startColumn),
    actualRow: range.startRow,
    actualColumn: range.startColumn,
    isMerged: false,
    isMergedMainCell: false,
  };
  const selections = [{ range, primary, style: null }];
  const where = { unitId, subUnitId, selections, reveal: true };
  commands.syncExecuteCommand(SetSelectionsOperation.id, where);
}
