import type {
  CellErrorValue,
  CellValue as FileValue,
  Workbook,
  Worksheet,
} from "@cj-tech-master/excelts";
import { type Area, readSheetArea } from "../a1";
import type { CellError, CellValue } from "../port";

const MS_PER_DAY = 86_400_000;
/** Serial number of 1 January 1970. */
const UNIX_DAY_0 = 25_569;

const serial = (date: Date): number => date.getTime() / MS_PER_DAY + UNIX_DAY_0;

export const isCellError = (value: unknown): value is CellError =>
  typeof value === "object" && value !== null && "error" in value;

/** What a cell of a file shows, in the port's values: the last value of a formula, the words of rich text. */
export function fromFile(value: FileValue): CellValue {
  if (value === null || value === undefined) return "";
  if (typeof value !== "object") return value;
  if (value instanceof Date) return serial(value);
  if (isCellError(value)) return { error: value.error };
  if ("formula" in value || "sharedFormula" in value) return fromFile(value.result);
  if ("richText" in value && value.richText) return value.richText.map(({ text }) => text).join("");
  if ("text" in value) return value.text;
  if ("checkbox" in value) return value.checkbox;
  return "";
}

/** Errors that a file can hold; any other one is stored as "not available". */
const STORED_ERRORS = [
  "#N/A",
  "#REF!",
  "#NAME?",
  "#DIV/0!",
  "#NULL!",
  "#VALUE!",
  "#NUM!",
  "#SPILL!",
  "#CALC!",
] as const satisfies readonly CellErrorValue["error"][];

export const toError = ({ error }: CellError): CellErrorValue => ({
  error: STORED_ERRORS.find((stored) => stored === error) ?? "#N/A",
});

/** The same value as a file holds it. Text stays text, whatever it begins with. */
export function toFile(value: CellValue): Exclude<FileValue, undefined> {
  if (value === "") return null;
  return isCellError(value) ? toError(value) : value;
}

export const sameValue = (a: CellValue, b: CellValue): boolean =>
  isCellError(a) && isCellError(b) ? a.error === b.error : a === b;

export interface CellsAt {
  readonly sheet: Worksheet;
  readonly area: Area;
}

export const sheetNamed = (book: Workbook, name: string): Worksheet | undefined =>
  book.worksheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());

/** The cells of a reference with sheet, or of a defined name; null where there are none. */
export function cellsAt(book: Workbook, ref: string): CellsAt | null {
  const direct = readSheetArea(ref);
  if (direct) {
    const sheet = sheetNamed(book, direct.sheet);
    return sheet ? { sheet, area: direct.area } : null;
  }
  const entry = book.definedNames
    .getAllEntries()
    .find(({ name }) => name.toLowerCase() === ref.toLowerCase());
  const range = entry?.ranges[0];
  return range !== undefined && readSheetArea(range) ? cellsAt(book, range) : null;
}

/** Takes a sheet out of a workbook, with the names that point to it. */
export function removeSheet(book: Workbook, sheet: Worksheet): void {
  const names = book.definedNames;
  names.model = names.model.filter(
    ({ ranges }) => !ranges.some((range) => readSheetArea(range)?.sheet === sheet.name),
  );
  for (const { name } of sheet.getTables()) sheet.removeTable(name);
  book.removeWorksheet(sheet.id);
}
