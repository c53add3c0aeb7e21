/** Reads cells of the embedded workbook: what is typed, what formulas give, and what they spill. */
import {
  CellValueType,
  type ICellData,
  type IRange,
  type Nullable,
  type Worksheet,
} from "@univerjs/core";
import {
  ERROR_TYPE_SET,
  type ErrorType,
  FormulaDataModel,
  IDefinedNamesService,
} from "@univerjs/engine-formula";
import { SetSelectionsOperation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import { type Area, areaRef, quotedSheet, readSheetArea } from "../a1";
import type { CellError, CellValue, FormulaCell } from "../port";
import type { Engine } from "./engine";
import { NAMESPACE } from "./functionsBridge";

// Cell values of the port to and from the cells of the engine.

export const isCellError = (value: CellValue): value is CellError => typeof value === "object";

/** Rich text as it is typed into a cell is read as its plain text; its stream ends in \r\n. */
const richText = (cell: ICellData): string | undefined =>
  cell.p?.body?.dataStream.replace(/\r\n$/, "");

export function readCell(cell: Nullable<ICellData>, faultSentence?: string): CellValue {
  const value = cell?.v ?? (cell ? richText(cell) : undefined);
  if (value === undefined || value === null) return "";
  if (cell?.t === CellValueType.BOOLEAN || typeof value === "boolean")
    return value === true || value === 1 || value === "1";
  if (typeof value === "number") return value;
  if (cell?.t === CellValueType.NUMBER && value !== "") return Number(value);
  if (!ERROR_TYPE_SET.has(value as ErrorType)) return value;
  return faultSentence === undefined ? { error: value } : { error: value, message: faultSentence };
}

/** A cell that holds just this value: what it held before, a formula included, goes. Its style stays. */
export function writtenCell(value: CellValue): ICellData {
  const cleared = { f: null, si: null, p: null };
  if (value === "") return { ...cleared, v: null, t: null };
  if (typeof value === "number") return { ...cleared, v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { ...cleared, v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  if (isCellError(value)) return { ...cleared, v: value.error, t: CellValueType.STRING };
  return { ...cleared, v: value, t: CellValueType.STRING };
}

/** A cell that holds a formula, whose value the engine will work out. */
export const formulaCell = (formula: string): ICellData => ({
  f: formula,
  v: null,
  t: null,
  si: null,
  p: null,
});

export const isBlankCell = (cell: Nullable<ICellData>): boolean =>
  !cell || (readCell(cell) === "" && !cell.f && !cell.si);

// Areas of A1 notation, which count from 1, as ranges of the engine, which count from 0, and back.

export const engineRange = ({ top, left, bottom, right }: Area): IRange => ({
  startRow: top - 1,
  startColumn: left - 1,
  endRow: bottom - 1,
  endColumn: right - 1,
});

export const areaOf = ({ startRow, startColumn, endRow, endColumn }: IRange): Area => ({
  top: startRow + 1,
  left: startColumn + 1,
  bottom: endRow + 1,
  right: endColumn + 1,
});

/** "Log!A1:C9" for a range of a sheet. */
export const refOf = (sheet: string, range: IRange): string =>
  `${quotedSheet(sheet)}!${areaRef(areaOf(range))}`;

export const oneCell = (row: number, column: number): IRange => ({
  startRow: row,
  startColumn: column,
  endRow: row,
  endColumn: column,
});

export interface Place {
  readonly sheet: Worksheet;
  readonly range: IRange;
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

export class Grid {
  private readonly formulas: FormulaDataModel;
  private readonly names: IDefinedNamesService;

  constructor(private readonly engine: Engine) {
    this.formulas = engine.injector.get(FormulaDataModel);
    this.names = engine.injector.get(IDefinedNamesService);
  }

  sheet(name: string): Worksheet | null {
    return this.engine.workbook.getSheets().find((sheet) => same(sheet.getName(), name)) ?? null;
  }

  /** Where a reference with sheet, or a defined name, points; null where nowhere. */
  locate(ref: string): Place | null {
    const there = readSheetArea(ref) ?? readSheetArea(this.nameTarget(ref) ?? "");
    const sheet = there && this.sheet(there.sheet);
    return sheet ? { sheet, range: engineRange(there.area) } : null;
  }

  hasName(name: string): boolean {
    return this.nameTarget(name) !== null;
  }

  /** Ids of the defined names that point into a sheet. */
  namesOn(sheet: Worksheet): string[] {
    return Object.values(this.names.getDefinedNameMap(this.engine.unitId) ?? {})
      .filter((item) => this.locate(item.name)?.sheet === sheet)
      .map((item) => item.id);
  }

  private nameTarget(name: string): string | null {
    const known = Object.values(this.names.getDefinedNameMap(this.engine.unitId) ?? {});
    return known.find((item) => same(item.name, name))?.formulaOrRefString ?? null;
  }

  /** What is stored in a cell, not what a formula elsewhere spilled into it. */
  stored(sheet: Worksheet, row: number, column: number): Nullable<ICellData> {
    return sheet.getCellMatrix().getValue(row, column);
  }

  formula(sheet: Worksheet, row: number, column: number): string | null {
    const cell = this.stored(sheet, row, column);
    if (cell?.f) return cell.f;
    if (!cell?.si) return null;
    const { unitId } = this.engine;
    return this.formulas.getFormulaStringByCell(row, column, sheet.getSheetId(), unitId) ?? null;
  }

  /** The cells that the formula of a cell fills; null where it fills just its own. */
  spill(sheet: Worksheet, row: number, column: number): IRange | null {
    const spills = this.formulas.getArrayFormulaRange()[this.engine.unitId];
    return spills?.[sheet.getSheetId()]?.[row]?.[column] ?? null;
  }

  value(sheet: Worksheet, row: number, column: number): CellValue {
    const sheetId = sheet.getSheetId();
    const cell = this.stored(sheet, row, column);
    const spilled = this.formulas.getArrayFormulaCellData()[this.engine.unitId]?.[sheetId];
    const shown = isBlankCell(cell) ? spilled?.[row]?.[column] : cell;
    return readCell(shown, this.engine.faults.at({ sheetId, row, column }));
  }

  values({ sheet, range }: Place): CellValue[][] {
    const rows: CellValue[][] = [];
    for (let row = range.startRow; row <= range.endRow; row++) {
      const values: CellValue[] = [];
      for (let column = range.startColumn; column <= range.endColumn; column++)
        values.push(this.value(sheet, row, column));
      rows.push(values);
    }
    return rows;
  }

  /** Whether nothing is stored in any cell of a range. */
  isFree({ sheet, range }: Place): boolean {
    for (let row = range.startRow; row <= range.endRow; row++)
      for (let column = range.startColumn; column <= range.endColumn; column++)
        if (!isBlankCell(this.stored(sheet, row, column))) return false;
    return true;
  }
}

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

const OUR_FUNCTION = new RegExp(`\\b${NAMESPACE}\\.`, "i");

/** Every cell whose formula calls a function of ours, sheet by sheet. */
export function ourCells(
  { workbook }: Engine,
  grid: Grid,
): (FormulaCell & { readonly place: Place })[] {
  return workbook.getSheets().flatMap((sheet) => {
    const found: (FormulaCell & { place: Place })[] = [];
    sheet.getCellMatrix().forValue((row, column) => {
      const formula = grid.formula(sheet, row, column);
      if (formula === null || !OUR_FUNCTION.test(formula)) return;
      const range = oneCell(row, column);
      found.push({ ref: refOf(sheet.getName(), range), formula, place: { sheet, range } });
    });
    return found;
  });
}
