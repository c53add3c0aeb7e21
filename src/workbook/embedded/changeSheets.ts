/** Changes of whole sheets. */
import { mergeWorksheetSnapshotWithDefault, type IWorksheetData } from "@univerjs/core";
import {
  InsertSheetMutation,
  RemoveSheetMutation,
  SetWorksheetRowCountMutation,
} from "@univerjs/sheets";
import type { Engine } from "./engine";
import { change, type Change } from "./step";

export function addSheet(
  { unitId }: Engine,
  index: number,
  plan: Partial<IWorksheetData> & { id: string },
): Change {
  const sheet = mergeWorksheetSnapshotWithDefault(plan);
  const gone = { unitId, subUnitId: sheet.id, subUnitName: sheet.name };
  return change(InsertSheetMutation.id, { unitId, index, sheet }, RemoveSheetMutation.id, gone);
}

export function removeSheet(engine: Engine, sheetId: string): Change {
  const { workbook } = engine;
  const sheet = workbook.getSheetBySheetId(sheetId)!;
  const index = workbook.getSheets().indexOf(sheet);
  const { redo, undo } = addSheet(engine, index, structuredClone(sheet.getConfig()));
  return { redo: undo, undo: redo };
}

export function setRowCount(
  { unitId }: Engine,
  subUnitId: string,
  before: number,
  rowCount: number,
): Change {
  const at = { unitId, subUnitId };
  const id = SetWorksheetRowCountMutation.id;
  return change(id, { ...at, rowCount }, id, { ...at, rowCount: before });
}
