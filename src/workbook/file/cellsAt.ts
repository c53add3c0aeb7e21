import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import { readSheetArea, type Area } from "../a1";

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
