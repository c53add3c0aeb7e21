/** What the pane reads from the workbook, as it stands there. */
import {
  DATA_PARTS,
  DATA_TABLES,
  forEachTable,
  type DataPart,
} from "../../workbook/blueprint/dataTables";
import type { CellValue, TableData, WorkbookPort } from "../../workbook/port";

export interface RawBook extends Readonly<Record<DataPart, TableData | null>> {
  readonly settings: readonly (readonly CellValue[])[] | null;
  /** Tables that are not among ours; a partner's throws may stand in one. */
  readonly otherTables: readonly string[];
}

export const SETTINGS = "Settings";

export async function readRawBook(port: WorkbookPort): Promise<RawBook> {
  const [data, settings, tables] = await Promise.all([
    Promise.all(DATA_PARTS.map((part) => port.readTable(DATA_TABLES[part]))),
    port.readRange(SETTINGS),
    port.tableNames(),
  ]);
  const ours = new Set(Object.values(DATA_TABLES).map((name) => name.toLowerCase()));
  const otherTables = tables.filter((name) => !ours.has(name.toLowerCase()));
  const byPart = forEachTable((_, part) => data[DATA_PARTS.indexOf(part)]!);
  return { ...byPart, settings, otherTables };
}

/** The header row and the rows under it, as the core reads a table. */
export const cellsOf = (table: TableData | null): readonly (readonly CellValue[])[] =>
  table ? [table.headers, ...table.rows] : [];

/** Keeps the parts of the earlier reading that did not change, so that nothing is worked out twice. */
export function keepUnchanged(before: RawBook, now: RawBook): RawBook {
  const table = (_: string, part: DataPart): TableData | null =>
    sameCells(cellsOf(before[part]), cellsOf(now[part])) && before[part]?.sheet === now[part]?.sheet
      ? before[part]
      : now[part];
  const kept: RawBook = {
    ...forEachTable(table),
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
