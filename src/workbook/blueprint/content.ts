import bag from "../../../seeds/bag.json";
import course from "../../../seeds/course.json";
import putting from "../../../seeds/putting.json";
import results from "../../../seeds/results.json";
import throws from "../../../seeds/throws.json";
import { dayFromIso } from "../../core/log/cell";
import type { CellValue } from "../port";

/**
 * The tables that players fill, by the part of the content that stands in each. Opening a file, the
 * pane and the starter data go by this list. Names are a file format: never change one.
 */
export const DATA_TABLES = {
  throws: "Throws",
  bag: "Bag",
  course: "Course",
  results: "Results",
} as const;

export type DataPart = keyof typeof DATA_TABLES;

export const DATA_PARTS = Object.keys(DATA_TABLES) as readonly DataPart[];

/**
 * Something for each of these tables.
 *
 * @example forEachTable((name) => name.length).bag // 3
 */
export const forEachTable = <T>(make: (name: string, part: DataPart) => T): Record<DataPart, T> =>
  Object.fromEntries(DATA_PARTS.map((part) => [part, make(DATA_TABLES[part], part)])) as Record<
    DataPart,
    T
  >;

type Rows = readonly (readonly CellValue[])[];

/** What stands in the tables and inputs of a new workbook. */
export interface Content extends Readonly<Record<DataPart, Rows>> {
  /** Values of settings by label, in lower case; the usual ones where there is none. */
  readonly settings: ReadonlyMap<string, CellValue>;
  /** Disc shown in the small one-disc panels. */
  readonly disc: string;
  readonly notes: string;
  /** Distance and share of putts made; blank rows where the usual table is meant. */
  readonly putting: Rows;
}

const withoutHeader = (table: Rows): Rows => table.slice(1);
const withSerialDays = (table: Rows): Rows =>
  withoutHeader(table).map(([day, ...rest]) => [dayFromIso(String(day)) ?? "", ...rest]);

/** Seven rows, so that a player's own table has room. */
const BLANK_PUTTING: Rows = Array.from({ length: 7 }, () => ["", ""]);

export const EMPTY: Content = {
  settings: new Map(),
  disc: "",
  notes: "",
  ...forEachTable(() => []),
  putting: BLANK_PUTTING,
};

/** Invented data; see seeds/README.md. */
export const STARTER: Content = {
  settings: new Map([["player", "Me"]]),
  disc: "Violet driver",
  notes: "mint fairway 318, 305 x 270, copper mid 271 10 left",
  throws: withSerialDays(throws),
  bag: withoutHeader(bag),
  course: withoutHeader(course),
  results: withSerialDays(results),
  putting: withoutHeader(putting),
};

const MS_PER_DAY = 86_400_000;
/** Day 0 of spreadsheet serial numbers; right from 1 March 1900 on (ECMA-376 part 1, 18.17.4.1). */
const DAY_0_MS = Date.UTC(1899, 11, 30);

/**
 * Calendar day as yyyy-mm-dd of a serial number; the time of day is dropped.
 *
 * @example isoFromDay(46348) // "2026-11-22"
 */
export function isoFromDay(serial: number): string {
  return new Date(DAY_0_MS + Math.floor(serial) * MS_PER_DAY).toISOString().slice(0, 10);
}
