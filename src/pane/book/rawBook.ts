/** What the pane reads from the workbook, as it stands there. */
import type { CellValue, TableData, WorkbookPort } from "../../workbook/port";

export interface RawBook {
  readonly throws: TableData | null;
  readonly bag: TableData | null;
  readonly course: TableData | null;
  readonly results: TableData | null;
  readonly settings: readonly (readonly CellValue[])[] | null;
  /** Tables that are not ours. */
  readonly otherTables: readonly string[];
}

export const TABLES = {
  throws: "Throws",
  bag: "Bag",
  course: "Course",
  results: "Results",
} as const;
export const SETTINGS = "Settings";

export async function readRawBook(port: WorkbookPort): Promise<RawBook> {
  const [throws, bag, course, results, settings, tables] = await Promise.all([
    port.readTable(TABLES.throws),
    port.readTable(TABLES.bag),
    port.readTable(TABLES.course),
    port.readTable(TABLES.results),
    port.readRange(SETTINGS),
    port.tableNames(),
  ]);
  const ours = new Set(Object.values(TABLES).map((name) => name.toLowerCase()));
  const otherTables = tables.filter((name) => !ours.has(name.toLowerCase()));
  return { throws, bag, course, results, settings, otherTables };
}

/** The header row and the rows under it, as the core reads a table. */
export const cellsOf = (table: TableData | null): readonly (readonly CellValue[])[] =>
  table ? [table.headers, ...table.rows] : [];

/** Keeps the parts of the earlier reading that did not change, so that nothing is worked out twice. */
export function keepUnchanged(before: RawBook, now: RawBook): RawBook {
  const table = (part: "throws" | "bag" | "course" | "results"): TableData | null =>
    sameCells(cellsOf(before[part]), cellsOf(now[part])) && before[part]?.sheet === now[part]?.sheet
      ? before[part]
      : now[part];
  const kept: RawBook = {
    throws: table("throws"),
    bag: table("bag"),
    course: table("course"),
    results: table("results"),
    settings: sameCells(before.settings ?? [], now.settings ?? []) ? before.settings : now.settings,
    otherTables: sameCells([before.otherTables], [now.otherTables])
      ? before.otherTables
      : now.otherTables,
  };
  const parts = Object.keys(kept) as (keyof RawBook)[];
  return parts.every((part) => kept[part] === before[part]) ? before : kept;
}

type Grid = readonly (readonly CellValue[])[];

const sameCells = (a: Grid, b: Grid): boolean =>
  a.length === b.length &&
  a.every((row, at) => {
    const other = b[at]!;
    return row.length === other.length && row.every((cell, i) => sameCell(cell, other[i]!));
  });

/** Whether two cells hold the same; error cells are the same when they show the same. */
export const sameCell = (a: CellValue, b: CellValue): boolean =>
  typeof a === "object" && typeof b === "object" ? a.error === b.error : a === b;
