/** What the sheets of a package hold: values, formulas, tables and names, without their looks. */
import { readArea, type Area } from "../a1";
import type { CellValue } from "../port";
import { shiftFormula } from "./formulaShift";
import {
  LAST_COLUMN,
  LAST_ROW,
  sharedStrings,
  valueOf,
  visitCells,
  type StoredCell,
  type StoredRow,
} from "./sheetCells";
import { attributesOf, TagReader } from "./xml";
import type { DefinedName, SheetPart, WorkbookPackage } from "./workbookPackage";

export interface FormulaContent {
  readonly row: number;
  readonly column: number;
  /** As files write it, without "=", shared formulas included. */
  readonly text: string;
  /** The cells that an array fills; null for a formula of one cell. */
  readonly array: Area | null;
  /** Whether the array grows and shrinks by itself. */
  readonly dynamic: boolean;
  /** The value stored beside it; undefined where there is none. */
  readonly value: CellValue | undefined;
  /** false for what only a spreadsheet can work out, such as a data table. */
  readonly calculable: boolean;
}

export interface TableContent {
  readonly path: string;
  readonly name: string;
  /** Header, body and total row. */
  readonly area: Area;
  readonly headers: readonly string[];
  /** Formula of each column that has one, as files write it. */
  readonly formulas: readonly (string | undefined)[];
  readonly hasHeader: boolean;
  readonly totalRows: number;
}

export interface SheetContent {
  readonly part: SheetPart;
  /** Values by row and column, formulas' values included. */
  readonly rows: ReadonlyMap<number, readonly (CellValue | undefined)[]>;
  readonly formulas: readonly FormulaContent[];
  readonly tables: readonly TableContent[];
}

export interface WorkbookContent {
  readonly sheets: readonly SheetContent[];
  readonly names: readonly DefinedName[];
}

const formulaKey = (text: string): string => text.trim();

/** A formula that other cells share, and where it is written. */
interface Shared {
  readonly text: string;
  readonly row: number;
  readonly column: number;
}

function formulaIn(
  cell: StoredCell,
  shared: Map<string, Shared>,
  value: CellValue | undefined,
): FormulaContent | null {
  const { formula, row, column } = cell;
  if (!formula) return null;
  let text = formulaKey(formula.text);
  if (formula.kind === "shared" && formula.shared !== undefined) {
    const first = shared.get(formula.shared);
    if (text !== "") shared.set(formula.shared, { text, row, column });
    else if (first) text = shiftFormula(first.text, row - first.row, column - first.column);
  }
  const array = formula.kind === "array" ? readArea(formula.ref ?? "") : null;
  return {
    row,
    column,
    text,
    array,
    dynamic: array !== null && cell.dynamic,
    value,
    calculable: formula.kind !== "dataTable" && text !== "",
  };
}

/** The strings that all sheets share. */
export function stringsOf(book: WorkbookPackage): string[] {
  const [path] = book.related(book.workbookPath, "sharedStrings");
  if (path === undefined) return [];
  const strings = sharedStrings(book.xml(path));
  book.forget(path);
  return strings;
}

/** The part of an area that a sheet has room for; null where it has none. */
export const withinLimits = ({ top, left, bottom, right }: Area): Area | null =>
  top > LAST_ROW || left > LAST_COLUMN
    ? null
    : { top, left, bottom: Math.min(bottom, LAST_ROW), right: Math.min(right, LAST_COLUMN) };

export function readTables(book: WorkbookPackage, sheetPath: string): TableContent[] {
  return book.related(sheetPath, "table").flatMap((path) => {
    const text = book.xml(path);
    const reader = new TagReader(text);
    const table = reader.find("table");
    if (!table) return [];
    const {
      displayName,
      name,
      ref = "",
      headerRowCount,
      totalsRowCount,
    } = attributesOf(text, table);
    const area = readArea(ref);
    const known = area && withinLimits(area);
    if (!known) return [];
    const headers: string[] = [];
    const formulas: (string | undefined)[] = [];
    for (let tag = reader.next(); tag; tag = reader.next()) {
      if (tag.kind === "close") continue;
      if (tag.name === "tableColumn") {
        headers.push(unescapedHeader(attributesOf(text, tag)["name"] ?? ""));
        formulas.push(undefined);
      } else if (tag.name === "calculatedColumnFormula" && headers.length > 0)
        formulas[headers.length - 1] = reader.text(tag).trim();
    }
    return [
      {
        path,
        name: displayName ?? name ?? "",
        area: known,
        headers,
        formulas,
        hasHeader: headerRowCount !== "0",
        totalRows: Number(totalsRowCount ?? 0),
      },
    ];
  });
}

/** A line end in a header is stored as _x000a_. */
const unescapedHeader = (name: string): string =>
  name.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) =>
    String.fromCharCode(parseInt(code, 16)),
  );

/** Goes through the cells of a sheet with what they hold; the value is undefined where none is stored. */
export function readSheetCells(
  xml: string,
  strings: readonly string[],
  eachRow: ((row: StoredRow) => void) | null,
  each: (cell: StoredCell, value: CellValue | undefined, formula: FormulaContent | null) => void,
): void {
  const shared = new Map<string, Shared>();
  visitCells(xml, {
    ...(eachRow ? { row: eachRow } : {}),
    cell: (cell) => {
      const value = cell.stored === undefined ? undefined : valueOf(cell, strings);
      each(cell, value, formulaIn(cell, shared, value));
    },
  });
}

/** Reads one sheet. Shared strings are read once for all of them. */
export function readSheet(
  book: WorkbookPackage,
  part: SheetPart,
  strings: readonly string[],
): SheetContent {
  const rows = new Map<number, (CellValue | undefined)[]>();
  const formulas: FormulaContent[] = [];
  readSheetCells(book.xml(part.path), strings, null, (cell, value, formula) => {
    if (formula) formulas.push(formula);
    if (value === undefined || value === "") return;
    let row = rows.get(cell.row);
    if (row === undefined) rows.set(cell.row, (row = []));
    row[cell.column] = value;
  });
  return { part, rows, formulas, tables: readTables(book, part.path) };
}

export function readContent(book: WorkbookPackage): WorkbookContent {
  const strings = stringsOf(book);
  return {
    sheets: book
      .sheets()
      .filter(({ isGrid }) => isGrid)
      .map((part) => readSheet(book, part, strings)),
    names: book.definedNames(),
  };
}
