/** The kinds of change that the embedded workbook makes, each with the change that takes it back. */
import {
  AbsoluteRefType,
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  mergeWorksheetSnapshotWithDefault,
  type ICellData,
  type IObjectMatrixPrimitiveType,
  type IRange,
  type ISheetDataValidationRule,
  type IWorksheetData,
} from "@univerjs/core";
import { AddDataValidationMutation, RemoveDataValidationMutation } from "@univerjs/data-validation";
import {
  IDefinedNamesService,
  RemoveDefinedNameMutation,
  serializeRangeWithSheet,
  SetDefinedNameMutation,
} from "@univerjs/engine-formula";
import {
  InsertSheetMutation,
  RemoveSheetMutation,
  SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
  SetWorksheetRowCountMutation,
  type ISetRangeValuesMutationParams,
} from "@univerjs/sheets";
import {
  AddConditionalRuleMutation,
  CFRuleType,
  CFValueType,
  DeleteConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import {
  AddSheetTableMutation,
  DeleteSheetTableMutation,
  SetSheetTableMutation,
  TableManager,
} from "@univerjs/sheets-table";
import type { ListRule } from "../blueprint/types";
import { isBlankCell } from "./cells";
import type { Engine } from "./engine";
import type { RenderedTable } from "./renderSheet";
import type { Change } from "./step";
import { ACCENT } from "./styles";
import { TABLE_LOOK } from "./tableLook";

const change = (redo: string, redoParams: object, undo: string, undoParams: object): Change => ({
  redo: { id: redo, params: redoParams },
  undo: { id: undo, params: undoParams },
});

export type Cells = IObjectMatrixPrimitiveType<ICellData>;

export function setCells(engine: Engine, subUnitId: string, cellValue: Cells): Change {
  const params = { unitId: engine.unitId, subUnitId, cellValue };
  const before = SetRangeValuesUndoMutationFactory(engine.injector, params);
  return change(SetRangeValuesMutation.id, params, SetRangeValuesMutation.id, before);
}

/** Writes cells, but of those that were typed already only the style: neither way touches their content. */
export function dressCells(engine: Engine, subUnitId: string, cells: Cells, typed: Cells): Change {
  const styleOnly = (all: Cells): Cells => {
    const kept: Record<number, Record<number, ICellData>> = {};
    for (const [row, line] of Object.entries(all)) {
      const made: Record<number, ICellData> = (kept[Number(row)] = {});
      for (const [column, cell] of Object.entries(line as Record<number, ICellData>)) {
        const isTyped = !isBlankCell(typed[Number(row)]?.[Number(column)]);
        made[Number(column)] = isTyped ? { s: cell.s ?? null } : cell;
      }
    }
    return kept;
  };
  const { redo, undo } = setCells(engine, subUnitId, styleOnly(cells));
  const before = undo.params as ISetRangeValuesMutationParams;
  const cellValue = styleOnly(before.cellValue as Cells);
  return { redo, undo: { ...undo, params: { ...before, cellValue } } };
}

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

export function addName({ unitId }: Engine, sheet: string, name: string, range: IRange): Change {
  const fixed = {
    ...range,
    startAbsoluteRefType: AbsoluteRefType.ALL,
    endAbsoluteRefType: AbsoluteRefType.ALL,
  };
  const params = {
    id: generateRandomId(),
    unitId,
    name,
    formulaOrRefString: serializeRangeWithSheet(sheet, fixed),
    localSheetId: SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  };
  return change(SetDefinedNameMutation.id, params, RemoveDefinedNameMutation.id, params);
}

export function removeName({ unitId, injector }: Engine, id: string): Change {
  const known = injector.get(IDefinedNamesService).getValueById(unitId, id)!;
  const params = { ...known, unitId };
  return change(RemoveDefinedNameMutation.id, params, SetDefinedNameMutation.id, params);
}

export function addList(
  { unitId }: Engine,
  subUnitId: string,
  ranges: IRange[],
  { values, column, strict }: ListRule,
): Change {
  const rule: ISheetDataValidationRule = {
    uid: generateRandomId(),
    type: DataValidationType.LIST,
    formula1: column ? `=${column}` : (values ?? []).join(","),
    ranges,
    allowBlank: true,
    showErrorMessage: strict,
    errorStyle: strict ? DataValidationErrorStyle.STOP : DataValidationErrorStyle.INFO,
    renderMode: DataValidationRenderMode.ARROW,
  };
  const at = { unitId, subUnitId };
  return change(AddDataValidationMutation.id, { ...at, rule }, RemoveDataValidationMutation.id, {
    ...at,
    ruleId: rule.uid,
  });
}

/** A bar behind shares from 0 to 1. */
export function addBar({ unitId }: Engine, subUnitId: string, range: IRange): Change {
  const cfId = generateRandomId();
  const rule = {
    cfId,
    ranges: [range],
    stopIfTrue: false,
    rule: {
      type: CFRuleType.dataBar,
      isShowValue: true,
      config: {
        min: { type: CFValueType.num, value: 0 },
        max: { type: CFValueType.num, value: 1 },
        isGradient: false,
        positiveColor: `${ACCENT}55`,
        nativeColor: `${ACCENT}55`,
      },
    },
  };
  const at = { unitId, subUnitId };
  return change(AddConditionalRuleMutation.id, { ...at, rule }, DeleteConditionalRuleMutation.id, {
    ...at,
    cfId,
  });
}
