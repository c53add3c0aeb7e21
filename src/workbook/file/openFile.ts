import { DomainError } from "../../core/errors";
import { findColumns } from "../../core/log/headings";
import { discKey } from "../../core/log/names";
import { DEFAULT_SETTINGS, readSettings } from "../../core/log/readSettings";
import {
  readThrows,
  THROW_HEADERS,
  type ThrowField,
  throwLayout,
  throwsShape,
} from "../../core/log/readThrows";
import { messages } from "../../core/messages";
import { isTwofold } from "../../core/notes/noteDate";
import type { Cells, LeftOut, Settings, ThrowLog } from "../../core/types";
import { toMetres, toMps } from "../../core/units";
import { type Area, readArea, readSheetArea } from "../a1";
import { type Content, EMPTY } from "../blueprint/content";
import { DATA_TABLES, forEachTable } from "../blueprint/dataTables";
import { blueprintOf, emptyBlueprint } from "../blueprint/index";
import type { TablePlan } from "../blueprint/types";
import { type CellValue, PortError } from "../port";
import { sentences } from "../sentences";
import { separatedCells } from "../separatedCells";
import { LAST_ROW } from "../package/sheetCells";
import { WorkbookPackage } from "../package/workbookPackage";
import { LARGEST_FILE } from "../package/zip";
import type { WholeBook, WholeSheet } from "../wholeBook";
import { readWhole } from "./readWhole";
import { withDays } from "./withDays";

/** Columns of the table Bag beside the disc's name. */
const BLANKS: readonly CellValue[] = ["", "", "", "", ""];

/** Rows for the table Bag with the discs of a log, once each and in its order; all else is blank. */
export function bagOf(throws: readonly (readonly CellValue[])[]): CellValue[][] {
  const names = new Map<string, string>();
  for (const [, disc] of throws) {
    const name = typeof disc === "string" || typeof disc === "number" ? String(disc).trim() : "";
    const key = discKey(name);
    if (name !== "" && !names.has(key)) names.set(key, name);
  }
  return [...names.values()].map((name) => [name, ...BLANKS]);
}

/** The least byte that text has; UTF-8 keeps all below 128 for themselves. */
const TAB = 9;

/** Text of a file: UTF-8 or UTF-16 by its mark, else the old Western code page. */
function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes.some((byte) => byte < TAB)) throw new PortError("invalid", sentences.notAWorkbook);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Cells of a file of separated values. */
export const csvCells = (bytes: Uint8Array): CellValue[][] => separatedCells(textOf(bytes));

type ThrowsInRows = readonly (readonly CellValue[])[];

/** Rows that may stand above the header. */
const SEARCHED = 20;

/** The columns of the table Throws, in its order. */
const FIELDS = Object.keys(THROW_HEADERS) as ThrowField[];

function headerRow(cells: ThrowsInRows): number {
  return cells.slice(0, SEARCHED).findIndex((row) => {
    const { disc, carry } = findColumns(row, THROW_HEADERS);
    return disc && carry;
  });
}

const isList = (cells: ThrowsInRows): boolean => {
  try {
    return throwsShape(cells) === "list";
  } catch {
    return false;
  }
};

const blank = (row: readonly CellValue[]): boolean => row.every((value) => value === "");

/**
 * Rows for the table Throws out of any cells that have a Disc and a Carry column in their first
 * rows, or are a bare list of the two; null where they are neither. Figures under a header that
 * names another unit come in the usual one.
 */
export function throwsIn(cells: ThrowsInRows): CellValue[][] | null {
  const header = headerRow(cells);
  if (header < 0 && !isList(cells)) return null;
  const table = cells.slice(Math.max(header, 0));
  const { at, firstRow, ...units } = throwLayout(
    table,
    header < 0 ? "list" : "log",
    DEFAULT_SETTINGS,
  );
  const usual = toMetres(1, DEFAULT_SETTINGS.distanceUnit);
  const factors: Partial<Record<ThrowField, number>> = {
    carry: units.metresPerCarry / usual,
    offline: units.metresPerOffline / usual,
    rise: units.metresPerRise / usual,
    headwind: units.mpsPerHeadwind / toMps(1, DEFAULT_SETTINGS.windUnit),
  };
  return table
    .slice(firstRow)
    .filter((row) => !blank(row))
    .map((row) =>
      FIELDS.map((field) => {
        const value = row[at[field]] ?? "";
        return typeof value === "number" ? value * (factors[field] ?? 1) : value;
      }),
    );
}

/**
 * How many rows of the log will count and how many will not, with the reason of the first that does
 * not and its row as the sheet numbers it.
 *
 * @example
 * rowsInWords(content) // "3 rows: 2 count, 1 does not. Row 8: carry is blank."
 */
export function rowsInWords(content: Content): string {
  const blocks = blueprintOf(content).sheets.flatMap((sheet) => sheet.blocks);
  const table = blocks.find((block) => block.kind === "table" && block.name === DATA_TABLES.throws);
  const inputs = blocks.find((block) => block.kind === "cells" && block.name === "Settings");
  if (table?.kind !== "table" || inputs?.kind !== "cells") return "";
  const headers = table.columns.map(({ header }) => header);
  const cells = [headers, ...table.rows];
  const settings = rowsInWordsSettingsIn(inputs.values);
  const everyone = readThrows(cells, settings, "everyone");
  const rows = everyone.throws.length + everyone.leftOut.length;
  const read = readOrWhyNot(cells, settings);
  if (typeof read === "string") return `${countsIn(0, rows)} ${read}`;
  const { throws, leftOut } = read;
  const top = readArea(table.at)!.top;
  return `${countsIn(throws.length, leftOut.length)}${firstReason(leftOut, table.rows, top)}`;
}

/** The log; a sentence where it is refused as a whole. */
function readOrWhyNot(cells: Cells, settings: Settings): ThrowLog | string {
  try {
    return readThrows(cells, settings);
  } catch (cause) {
    if (!(cause instanceof DomainError)) throw cause;
    return cause.message;
  }
}

function countsIn(counting: number, others: number): string {
  const rows = counting + others;
  if (rows === 0) return "no throws.";
  const all = rows === 1 ? "1 row" : `${rows} rows`;
  if (others === 0) return rows === 1 ? `${all}, and it counts.` : `${all}, all count.`;
  if (counting === 0) return `${all}, none counts yet.`;
  return `${all}: ${counting} ${counting === 1 ? "counts" : "count"}, ${others} ${others === 1 ? "does" : "do"} not.`;
}

/** Rows that the player marked off, and other players', are as they should be; another reason goes before theirs. */
function firstReason(
  leftOut: readonly LeftOut[],
  rows: readonly (readonly CellValue[])[],
  top: number,
): string {
  const first =
    leftOut.find(
      ({ row, reason, otherPlayer }) =>
        otherPlayer === undefined && reason !== messages.log.markedOff(row),
    ) ?? leftOut[0];
  if (!first) return "";
  const date = String(rows[first.row - 2]?.[0] ?? "");
  const reason =
    isTwofold(date) && first.reason.includes(date)
      ? messages.workbook.twofoldDate(date)
      : first.reason.replace(/^Row \d+: /, "");
  return ` Row ${top + first.row - 1}: ${reason}`;
}

/** Settings that cannot be read say so in the sheet; here the usual ones stand in. */
function rowsInWordsSettingsIn(values: readonly (readonly CellValue[])[]): Settings {
  try {
    return readSettings(values);
  } catch {
    return DEFAULT_SETTINGS;
  }
}

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

/** Values of an area, row by row; rows that hold nothing are passed over. */
function* rowsIn(
  { cells }: WholeSheet,
  { top, left, bottom, right }: Area,
): Generator<CellValue[]> {
  const rows = [...cells.keys()].filter((row) => row >= top && row <= bottom);
  for (const row of rows.sort((a, b) => a - b)) {
    const line = cells.get(row)!;
    const last = Math.min(right, line.length - 1);
    const values = Array.from(
      { length: Math.max(0, last - left + 1) },
      (_, index) => line[left + index]?.value ?? "",
    );
    if (!isBlank(values)) yield values;
  }
}

/** Typed values of one of our tables, in the order of its plan; none where it is not there. */
function tableRows({ sheets }: WholeBook, name: string): CellValue[][] {
  const plan = plans.find((one) => one.name === name)!;
  const columns = plan.columns.filter(({ formula }) => formula === undefined);
  for (const sheet of sheets)
    for (const table of sheet.tables) {
      if (table.name.toLowerCase() !== name.toLowerCase()) continue;
      const headers = table.headers.map((header) => header.toLowerCase());
      const places = columns.map(({ header }) => headers.indexOf(header.toLowerCase()));
      const body = { ...table.area, top: table.area.top + 1 };
      return [...rowsIn(sheet, body)]
        .map((row) => places.map((place) => row[place] ?? ""))
        .filter((row) => !isBlank(row));
    }
  return [];
}

const hasTable = ({ sheets }: WholeBook, wanted: string): boolean =>
  sheets.some(({ tables }) => tables.some(({ name }) => name === wanted));

/** Columns of a foreign sheet that are looked at. */
const WIDTH = 100;

const sheetCells = (sheet: WholeSheet): CellValue[][] => [
  ...rowsIn(sheet, { top: 1, left: 1, bottom: LAST_ROW, right: WIDTH }),
];

function namedValues({ sheets, names }: WholeBook, wanted: string): Rows {
  const name = names.find((each) => each.name.toLowerCase() === wanted.toLowerCase());
  const there = readSheetArea(name?.refersTo.slice(1) ?? "");
  const sheet = sheets.find((each) => each.name === there?.sheet);
  if (!there || !sheet) return [];
  const { left } = there.area;
  return [...rowsIn(sheet, { ...there.area, right: left + 1 })];
}

/** Settings by label, and the putts that stand under the last of them. */
function settingsIn(book: WholeBook): Pick<Content, "settings" | "putting"> {
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

/** Our content out of the cells of a workbook; null where none of its sheets has throws. */
export function contentOf(book: WholeBook): OpenedFile | null {
  const isKnown = hasTable(book, DATA_TABLES.throws);
  let source: string | undefined;
  let throws: CellValue[][] | null = isKnown ? tableRows(book, DATA_TABLES.throws) : null;
  for (const sheet of book.sheets) {
    if (throws) break;
    throws = throwsIn(sheetCells(sheet));
    source = sheet.name;
  }
  if (!throws) return null;
  const taken = (name: string): boolean => (isKnown ? ourSheets.has(name) : name === source);
  const leftBehind = book.sheets
    .filter((sheet) => !taken(sheet.name) && sheetCells(sheet).length > 0)
    .map(({ name }) => name);
  const tables = forEachTable((name) => tableRows(book, name));
  const bag = hasTable(book, DATA_TABLES.bag) ? tables.bag : bagOf(throws);
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
  if (isPacked(bytes)) {
    const content = contentOf(readWhole(WorkbookPackage.read(bytes)).book);
    if (content) return content;
    throw new PortError("invalid", sentences.noThrowsInFile);
  }
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
