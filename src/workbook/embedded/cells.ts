/** Cell values of the port to and from the cells of the engine. */
import { CellValueType, type ICellData, type Nullable } from "@univerjs/core";
import { ERROR_TYPE_SET, type ErrorType } from "@univerjs/engine-formula";
import type { CellError, CellValue } from "../port";

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
