/**
 * A light workbook out of an .xlsx file, and back into the very same file: what changed is written in
 * place, every other byte stays. Nothing is worked out; a spreadsheet does that when it opens the file.
 */
import { type Area, areaRef, readArea, readSheetArea } from "../a1";
import { readContent, type SheetContent, type TableContent } from "../package/readContent";
import { visitCells } from "../package/sheetCells";
import { WorkbookPackage } from "../package/workbookPackage";
import { type NewValue, writeValues } from "../package/writeValues";
import { attributeSpans, splice, type Splice, TagReader } from "../package/xml";
import { type CellValue, PortError, sameCell, sameWord } from "../port";
import { sentences } from "../sentences";
import {
  type LightBook,
  type LightName,
  type LightSheet,
  type LightTable,
  sheetNamed,
} from "./lightBook";

/**
 * @param bytes an .xlsx file with the table Throws
 * @throws PortError "invalid" with the reason where it cannot be read, or could not be written again
 */
export function readLightFile(bytes: Uint8Array): LightBook {
  const book = lightBookIn(openable(bytes));
  const hasLog = book.sheets.some(({ tables }) =>
    tables.some(({ name }) => name.toLowerCase() === "throws"),
  );
  if (!hasLog) throw new PortError("invalid", sentences.fileWithoutLog);
  return book;
}

/**
 * @param original the file as it was opened
 * @param book the workbook that was read from it, changed since
 * @returns the file with what differs between the two
 */
export function writeLightFile(original: Uint8Array, book: LightBook): Uint8Array {
  const file = openable(original);
  const before = lightBookIn(file);
  const parts = new Map<string, string>();
  const contents = readContent(file).sheets;
  for (const sheet of book.sheets) {
    const content = contents.find(({ part }) => sameWord(part.name, sheet.name));
    if (!content) throw new PortError("unsupported", sentences.fileWithoutSheet(sheet.name));
    writeSheet(file, parts, content, sheetNamed(before, sheet.name)!, sheet);
  }
  return file.replacing(parts);
}

function openable(bytes: Uint8Array): WorkbookPackage {
  const file = WorkbookPackage.read(bytes);
  if (file.isSigned) throw new PortError("invalid", sentences.fileSigned);
  if (file.counts1904) throw new PortError("invalid", sentences.fileFrom1904);
  return file;
}

// Reading.

function lightBookIn(file: WorkbookPackage): LightBook {
  const { sheets, names } = readContent(file);
  return {
    sheets: sheets.map(lightSheet),
    names: names.flatMap(({ name, refersTo, sheetIndex }): LightName[] => {
      const place = readSheetArea(refersTo);
      return sheetIndex === undefined && place ? [{ name, ...place }] : [];
    }),
  };
}

function lightSheet({ part, rows, formulas, tables }: SheetContent): LightSheet {
  const values: CellValue[][] = [];
  for (const [row, cells] of rows) {
    const line: CellValue[] = (values[row - 1] = []);
    cells.forEach((value, column) => {
      if (value !== undefined && column > 0) line[column - 1] = value;
    });
  }
  return {
    name: part.name,
    rows: values,
    formulas: formulas.map(({ row, column, text }) => ({ row, column, text })),
    tables: tables.filter(({ hasHeader }) => hasHeader).map(lightTable),
  };
}

const lightTable = ({ name, area, formulas, totalRows }: TableContent): LightTable => ({
  name,
  area: { ...area, bottom: area.bottom - totalRows },
  formulas: formulas.map((formula) => formula ?? null),
});

// Writing.

/** A table that has more rows than in the file. */
interface Grown {
  readonly stored: TableContent;
  readonly area: Area;
}

function writeSheet(
  file: WorkbookPackage,
  parts: Map<string, string>,
  { part, formulas, tables }: SheetContent,
  before: LightSheet,
  now: LightSheet,
): void {
  const grown = tables.flatMap((stored): Grown[] => {
    const table = now.tables.find(({ name }) => sameWord(name, stored.name));
    return table && table.area.bottom > stored.area.bottom ? [{ stored, area: table.area }] : [];
  });
  const isCalculated = calculatedIn(formulas);
  const changed = changesBetween(before, now).filter((cell) => !isCalculated(cell));
  if (changed.length === 0 && grown.length === 0) return;
  const xml = file.xml(part.path);
  const styleAt = stylesUnder(xml, grown);
  const styled = changed.map((change) => ({ ...change, ...styleAt(change) }));
  const values = [
    ...styled,
    ...grown.flatMap(formulasOf).map((cell) => ({ ...cell, ...styleAt(cell) })),
  ];
  parts.set(part.path, writeValues(stretchRules(xml, grown), values));
  for (const { stored, area } of grown)
    parts.set(stored.path, withRef(file.xml(stored.path), areaRef(area)));
}

/** Whether a cell holds a formula, or is filled by one. */
export function calculatedIn(
  formulas: SheetContent["formulas"],
): (cell: { readonly row: number; readonly column: number }) => boolean {
  const single = new Set(formulas.map(({ row, column }) => `${row},${column}`));
  const arrays = formulas.flatMap(({ array }) => array ?? []);
  return ({ row, column }) =>
    single.has(`${row},${column}`) ||
    arrays.some(
      ({ top, left, bottom, right }) =>
        row >= top && row <= bottom && column >= left && column <= right,
    );
}

function changesBetween(before: LightSheet, now: LightSheet): NewValue[] {
  const changes: NewValue[] = [];
  for (let row = 0; row < Math.max(before.rows.length, now.rows.length); row++) {
    const [was = [], is = []] = [before.rows[row], now.rows[row]];
    for (let column = 0; column < Math.max(was.length, is.length); column++) {
      const value = is[column] ?? "";
      if (!sameCell(was[column] ?? "", value))
        changes.push({ row: row + 1, column: column + 1, value });
    }
  }
  return changes;
}

/** The formulas that the new rows of a table get. */
const formulasOf = ({ stored, area }: Grown): NewValue[] =>
  stored.formulas.flatMap((formula, along) =>
    formula === undefined
      ? []
      : Array.from({ length: area.bottom - stored.area.bottom }, (_, down) => ({
          row: stored.area.bottom + 1 + down,
          column: stored.area.left + along,
          value: "",
          formula,
        })),
  );

/** New cells of a table look like the lowest one of their column in the file. */
function stylesUnder(
  xml: string,
  grown: readonly Grown[],
): (cell: { row: number; column: number }) => { style?: number } {
  const styles = new Map<Grown, Map<number, number>>(grown.map((table) => [table, new Map()]));
  const within = ({ top, left, right }: Area, bottom: number, row: number, column: number) =>
    row > top && row <= bottom && column >= left && column <= right;
  if (grown.length > 0)
    visitCells(xml, {
      cell: ({ row, column, style }) => {
        for (const [{ stored }, columns] of styles)
          if (within(stored.area, stored.area.bottom, row, column)) columns.set(column, style);
      },
    });
  return ({ row, column }) => {
    for (const [{ stored, area }, columns] of styles) {
      const style = columns.get(column);
      if (row > stored.area.bottom && within(area, area.bottom, row, column) && style !== undefined)
        return { style };
    }
    return {};
  };
}

/** Lists and conditional formats that end with a table go on to its new end. */
function stretchRules(xml: string, grown: readonly Grown[]): string {
  if (grown.length === 0) return xml;
  const reader = new TagReader(xml);
  const changes: Splice[] = [];
  for (let tag = reader.next(); tag; tag = reader.next()) {
    if (tag.kind === "close") continue;
    if (tag.name !== "dataValidation" && tag.name !== "conditionalFormatting") continue;
    const sqref = attributeSpans(xml, tag).find(({ name }) => name === "sqref");
    if (!sqref) continue;
    const { start, end } = sqref;
    changes.push({ start, end, text: stretched(xml.slice(start, end), grown) });
  }
  return splice(xml, changes);
}

const stretched = (sqref: string, grown: readonly Grown[]): string =>
  sqref
    .split(" ")
    .map((text) => {
      const rule = readArea(text);
      const table =
        rule &&
        grown.find(
          ({ stored: { area } }) =>
            rule.bottom === area.bottom && rule.left >= area.left && rule.right <= area.right,
        );
      return table ? areaRef({ ...rule, bottom: table.area.bottom }) : text;
    })
    .join(" ");

/** A table part whose table and filter cover other cells. */
function withRef(xml: string, ref: string): string {
  const reader = new TagReader(xml);
  const changes: Splice[] = [];
  for (let tag = reader.next(); tag; tag = reader.next()) {
    if (tag.kind === "close" || (tag.name !== "table" && tag.name !== "autoFilter")) continue;
    const span = attributeSpans(xml, tag).find(({ name }) => name === "ref");
    if (span) changes.push({ start: span.start, end: span.end, text: ref });
  }
  return splice(xml, changes);
}
