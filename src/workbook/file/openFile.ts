import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import { EMPTY, type Content } from "../blueprint/content";
import { DATA_TABLES, forEachTable } from "../blueprint/dataTables";
import { emptyBlueprint } from "../blueprint";
import type { TablePlan } from "../blueprint/types";
import { PortError, type CellValue } from "../port";
import { sentences } from "../sentences";
import { bagOf } from "./bagOf";
import { readBook } from "./bookBytes";
import { cellsAt } from "./cellsAt";
import { fromFile } from "./cellValues";
import { csvCells } from "./csvCells";
import { FileTable } from "./fileTable";
import { withDays } from "./textDays";
import { throwsIn } from "./throwsIn";
import { rowsInWords } from "./rowsInWords";
import { LARGEST_FILE } from "./unpack";

type Rows = readonly (readonly CellValue[])[];

export interface OpenedFile {
  readonly content: Content;
  /** Sheets that hold something which was not taken over. */
  readonly leftBehind: readonly string[];
  /** How many rows of the log count and how many do not, and why. */
  readonly counted: string;
}

const plans: readonly TablePlan[] = emptyBlueprint().sheets.flatMap(({ blocks }) =>
  blocks.filter((block) => block.kind === "table"),
);
const ourSheets = new Set([...emptyBlueprint().sheets.map(({ name }) => name), "Pocket"]);

const isBlank = (row: readonly CellValue[]): boolean => row.every((value) => value === "");

/** Typed values of one of our tables, in the order of its plan; none where it is not there. */
function tableRows(book: Workbook, name: string): CellValue[][] {
  const plan = plans.find((one) => one.name === name)!;
  const table = FileTable.find(book, name)?.read();
  if (!table) return [];
  const headers = table.headers.map((header) => header.toLowerCase());
  return table.rows
    .map((row) =>
      plan.columns
        .filter(({ formula }) => formula === undefined)
        .map(({ header }) => row[headers.indexOf(header.toLowerCase())] ?? ""),
    )
    .filter((row) => !isBlank(row));
}

/** Columns of a foreign sheet that are looked at. */
const WIDTH = 100;

function sheetCells(sheet: Worksheet): CellValue[][] {
  const cells: CellValue[][] = [];
  sheet.eachRow((row) => {
    const values: CellValue[] = [];
    row.eachCell((cell, column) => {
      if (column <= WIDTH) values[column - 1] = fromFile(cell.value);
    });
    cells.push(Array.from(values, (value) => value ?? ""));
  });
  return cells;
}

function namedValues(book: Workbook, name: string): Rows {
  const cells = cellsAt(book, name);
  if (!cells) return [];
  const { top, bottom, left } = cells.area;
  return Array.from({ length: bottom - top + 1 }, (_, row) =>
    [left, left + 1].map((column) => fromFile(cells.sheet.getCell(top + row, column).value)),
  );
}

/** Settings by label, and the putts that stand under the last of them. */
function settingsIn(book: Workbook): Pick<Content, "settings" | "putting"> {
  const rows = namedValues(book, "Settings");
  const putting = namedValues(book, "Putting").filter((row) => !isBlank(row));
  const labelled = rows.filter(([label]) => typeof label === "string" && label !== "");
  return {
    settings: new Map(
      labelled.map(([label, value]) => [String(label).trim().toLowerCase(), value ?? ""]),
    ),
    putting: [...putting, ...EMPTY.putting].slice(
      0,
      Math.max(putting.length, EMPTY.putting.length),
    ),
  };
}

function fromBook(book: Workbook): OpenedFile {
  const hasTable = FileTable.find(book, DATA_TABLES.throws) !== null;
  let source: string | undefined;
  let throws: CellValue[][] | null = hasTable ? tableRows(book, DATA_TABLES.throws) : null;
  for (const sheet of book.worksheets) {
    if (throws) break;
    throws = throwsIn(sheetCells(sheet));
    source = sheet.name;
  }
  if (!throws) throw new PortError("invalid", sentences.noThrowsInFile);
  const taken = (name: string): boolean => (hasTable ? ourSheets.has(name) : name === source);
  const leftBehind = book.worksheets
    .filter((sheet) => !taken(sheet.name) && sheetCells(sheet).some((row) => !isBlank(row)))
    .map(({ name }) => name);
  const tables = forEachTable((name) => tableRows(book, name));
  const hasBag = FileTable.find(book, DATA_TABLES.bag) !== null;
  const bag = hasBag ? tables.bag : bagOf(throws);
  return opened({ ...EMPTY, ...settingsIn(book), ...tables, bag }, throws, leftBehind);
}

/** The disc that the small panels show to begin with. */
const firstDisc = (throws: Rows): string => String(throws[0]?.[1] ?? "");

function opened(rest: Content, rows: Rows, leftBehind: readonly string[]): OpenedFile {
  const throws = withDays(rows);
  const content = { ...rest, disc: firstDisc(throws), throws };
  return { content, leftBehind, counted: rowsInWords(content) };
}

export const isPacked = (bytes: Uint8Array): boolean =>
  (bytes[0] === 0x50 && bytes[1] === 0x4b) || (bytes[0] === 0xd0 && bytes[1] === 0xcf);

/**
 * Content for a workbook of ours, out of an .xlsx file (ours, or one with a Disc and a Carry column
 * somewhere) or a file of separated values. Only values are taken, and no formula of the file comes
 * along; text stays text, but for dates of throws that can be read in one way only. A file without a
 * bag gets the discs of its log. Throws a PortError with a sentence where the file cannot be used;
 * its `name` tells what a file of text claims to be.
 */
export async function openFile(bytes: Uint8Array, name = ""): Promise<OpenedFile> {
  if (isPacked(bytes)) return fromBook(await readBook(bytes));
  if (bytes.length > LARGEST_FILE)
    throw new PortError("invalid", sentences.fileTooLarge(LARGEST_FILE / 1_000_000));
  const throws = throwsIn(csvCells(bytes));
  if (!throws)
    throw new PortError(
      "invalid",
      /\.xls\w*$/i.test(name) ? sentences.notAWorkbook : sentences.noThrowsInFile,
    );
  return opened({ ...EMPTY, bag: bagOf(throws) }, throws, []);
}
