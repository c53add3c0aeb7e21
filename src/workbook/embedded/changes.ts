/** Changes of whole sheets. */
import {
  BooleanNumber,
  CommandType,
  DataValidationErrorStyle,
  DataValidationRenderMode,
  DataValidationType,
  generateRandomId,
  HorizontalAlign,
  type ICellData,
  type IMutationInfo,
  type IObjectMatrixPrimitiveType,
  type IRange,
  type ISheetDataValidationRule,
  type IStyleData,
  type IWorksheetData,
  mergeWorksheetSnapshotWithDefault,
  sequenceExecute,
  WrapStrategy,
} from "@univerjs/core";
import { AddDataValidationMutation, RemoveDataValidationMutation } from "@univerjs/data-validation";
import {
  IDefinedNamesService,
  RemoveDefinedNameMutation,
  SetDefinedNameMutation,
} from "@univerjs/engine-formula";
import {
  InsertSheetMutation,
  type ISetRangeValuesMutationParams,
  RemoveSheetMutation,
  SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  SetRangeValuesMutation,
  SetRangeValuesUndoMutationFactory,
  SetWorksheetRowCountMutation,
} from "@univerjs/sheets";
import {
  AddConditionalRuleMutation,
  CFRuleType,
  CFValueType,
  DeleteConditionalRuleMutation,
} from "@univerjs/sheets-conditional-formatting";
import { fixedRef, readSheetArea } from "../a1";
import type { ListRule, NamePlan, NumberFormat, Style } from "../blueprint/types";
import { PortError } from "../port";
import { sentences } from "../sentences";
import type { Engine } from "./engine";
import { areaOf, isBlankCell } from "./grid";

// Changes to the workbook as one step of its undo history: all of them or none.

export interface Change {
  readonly redo: IMutationInfo<object>;
  readonly undo: IMutationInfo<object>;
}

/** A change out of a mutation and the one that takes it back. */
export const change = (
  redo: string,
  redoParams: object,
  undo: string,
  undoParams: object,
): Change => ({
  redo: { id: redo, params: redoParams },
  undo: { id: undo, params: undoParams },
});

/** Makes the changes without a trace in the undo history, for a workbook that is being opened. */
export function apply({ commands }: Engine, changes: readonly Change[], doing: string): void {
  const done: Change[] = [];
  try {
    for (const change of changes) {
      if (!commands.syncExecuteCommand(change.redo.id, change.redo.params))
        throw new Error(change.redo.id);
      done.push(change);
    }
  } catch (cause) {
    sequenceExecute(undosOf(done), commands);
    throw Object.assign(new PortError("failed", sentences.failed(doing)), { cause });
  }
}

const undosOf = (changes: readonly Change[]): IMutationInfo<object>[] =>
  changes.map(({ undo }) => undo).reverse();

/** Makes the changes as one step that Undo takes back whole. */
export function takeStep(engine: Engine, changes: readonly Change[], doing: string): void {
  if (changes.length === 0) return;
  apply(engine, changes, doing);
  engine.history.pushUndoRedo({
    unitID: engine.unitId,
    undoMutations: undosOf(changes),
    redoMutations: changes.map(({ redo }) => redo),
  });
}

// Changes of cells.

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

// Changes of defined names.

export function addName({ unitId }: Engine, sheet: string, name: string, range: IRange): Change {
  const params = {
    id: generateRandomId(),
    unitId,
    name,
    formulaOrRefString: fixedRef(sheet, areaOf(range)),
    localSheetId: SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  };
  return change(SetDefinedNameMutation.id, params, RemoveDefinedNameMutation.id, params);
}

/**
 * A name of any kind; a reference stands without "=", as the engine keeps it.
 * @param sheetId of the sheet on which alone it is known, where that sheet is yet to be made
 */
export function addNamePlan(
  { unitId, workbook }: Engine,
  plan: NamePlan,
  sheetId?: string,
): Change {
  const formula = plan.refersTo.replace(/^=/, "");
  const known = plan.sheet === undefined ? undefined : workbook.getSheetBySheetName(plan.sheet);
  const params = {
    id: generateRandomId(),
    unitId,
    name: plan.name,
    formulaOrRefString: isReference(formula) ? formula : `=${formula}`,
    localSheetId: sheetId ?? known?.getSheetId() ?? SCOPE_WORKBOOK_VALUE_DEFINED_NAME,
  };
  return change(SetDefinedNameMutation.id, params, RemoveDefinedNameMutation.id, params);
}

const isReference = (formula: string): boolean =>
  formula.split(",").every((part) => readSheetArea(part) !== null);

export function removeName({ unitId, injector }: Engine, id: string): Change {
  const known = injector.get(IDefinedNamesService).getValueById(unitId, id)!;
  const params = { ...known, unitId };
  return change(RemoveDefinedNameMutation.id, params, SetDefinedNameMutation.id, params);
}

// How each role of the blueprint looks in the embedded workbook. The page's dark theme turns these colours over.

const FONT = { ff: "Arial" };
const ink = (rgb: string): IStyleData => ({ cl: { rgb } });
const fill = (rgb: string): IStyleData => ({ bg: { rgb } });
const bold: IStyleData = { bl: BooleanNumber.TRUE };

const DARK = "#1c2326";
const GREY = "#5b666b";
export const ACCENT = "#0b5560";

const LOOKS: Record<Style, IStyleData> = {
  plain: { fs: 11, ...ink(DARK) },
  title: { fs: 20, ...bold, ...ink(DARK) },
  lead: { fs: 12, ...ink(GREY) },
  heading: { fs: 12, ...bold, ...ink(ACCENT) },
  label: { fs: 11, ...ink(GREY) },
  input: { fs: 11, ...ink(DARK), ...fill("#e4f0f2"), ht: HorizontalAlign.LEFT },
  answer: { fs: 14, ...bold, ...ink(DARK), ht: HorizontalAlign.LEFT },
  figure: { fs: 11, ...ink(DARK), ht: HorizontalAlign.LEFT },
  hint: { fs: 9, ...ink(GREY) },
  caution: { fs: 11, ...bold, ...ink("#8a3b12"), tb: WrapStrategy.OVERFLOW },
};

/** Header of a table or of a spill. */
export const HEADER: IStyleData = {
  ...FONT,
  fs: 11,
  ...bold,
  ...ink("#ffffff"),
  ...fill(ACCENT),
};

/** In rows of a table or a spill nothing stands out by size, and numbers keep to the right. */
const inRows = (role: Style): IStyleData => {
  const look = LOOKS[role];
  return { ...look, fs: Math.min(look.fs ?? 11, 11), ht: HorizontalAlign.UNSPECIFIED };
};

/** A role and a number format as one cell style, the same object for the same pair. */
const made = new Map<string, IStyleData>();
export function styleOf(role: Style = "plain", format?: NumberFormat, rows = false): IStyleData {
  const key = `${role}|${format ?? ""}|${rows}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const look = rows ? inRows(role) : LOOKS[role];
  const style = { ...FONT, ...look, ...(format ? { n: { pattern: format } } : {}) };
  made.set(key, style);
  return style;
}

// Lists that cells offer, and bars behind shares.

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

/** The sentence behind an error cell. The engine keeps only the code, so the sentences stand here, by cell. */
export interface CellPlace {
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
}

export class FaultMessages {
  private readonly sentences = new Map<string, string>();

  /** Notes the sentence of the latest calculation of a cell; none clears it. */
  note(place: CellPlace, sentence: string | undefined): void {
    const key = keyOf(place);
    if (sentence === undefined) this.sentences.delete(key);
    else this.sentences.set(key, sentence);
  }

  at(place: CellPlace): string | undefined {
    return this.sentences.get(keyOf(place));
  }
}

const keyOf = ({ sheetId, row, column }: CellPlace): string => `${sheetId}:${row}:${column}`;

/** Calls back once after any number of changes to sheets made in one go; returns how to stop. */
export function whenChanged({ commands }: Engine, listener: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const heard = commands.onCommandExecuted(({ id, type }) => {
    if (type !== CommandType.MUTATION || !id.startsWith("sheet.")) return;
    timer ??= setTimeout(() => {
      timer = undefined;
      listener();
    });
  });
  return () => {
    heard.dispose();
    clearTimeout(timer);
  };
}
