/**
 * One workbook out of two that were changed apart: the file as the desk has it, and what the phone did
 * since it opened an earlier state of that file.
 */
import { discKey } from "../core/log/names";
import { SETTING_LABELS } from "../core/log/settingsTable";
import { headingOf } from "../core/log/headings";
import { DATA_TABLES } from "../workbook/blueprint/dataTables";
import {
  type LightBook,
  rangeAt,
  readRange,
  TableOfBook,
  writeRange,
} from "../workbook/light/lightBook";
import type { CellValue, Row } from "../workbook/port";

/** A setting that both changed, each to something else. */
export interface SettingInDoubt {
  readonly label: string;
  readonly onPhone: CellValue;
  readonly inFile: CellValue;
}

export interface MergedBook {
  /** The file's workbook with the phone's changes in it. */
  readonly book: LightBook;
  /** Rows that came from the phone: added, changed, removed. */
  readonly added: number;
  readonly changed: number;
  readonly removed: number;
  /** Rows that both changed: the file's stay. */
  readonly filesKept: number;
  /** The file's values stand until `settle` says otherwise. */
  readonly inDoubt: readonly SettingInDoubt[];
}

type Cells = readonly CellValue[];

/** The columns by which a row is the same row, whatever its others say. */
const SAME_BY: Readonly<Record<string, readonly string[]>> = {
  throws: ["Date", "Disc", "Carry", "Player"],
  bag: ["Disc"],
  course: ["Course", "Hole"],
  results: ["Date", "Course", "Hole", "Disc"],
  putts: ["Date", "Distance"],
};

/**
 * @param ancestor the file as the phone had opened it
 * @param phone the phone's workbook now
 * @param desk the file as it is now; not changed
 */
export function mergeBooks(ancestor: LightBook, phone: LightBook, desk: LightBook): MergedBook {
  const book = structuredClone(desk);
  const totals = { added: 0, changed: 0, removed: 0, filesKept: 0 };
  for (const [part, name] of Object.entries(DATA_TABLES)) {
    const counts = mergeTable(name, SAME_BY[part]!, ancestor, phone, book);
    for (const key of Object.keys(totals) as (keyof typeof totals)[]) totals[key] += counts[key];
  }
  return { book, ...totals, inDoubt: mergeSettings(ancestor, phone, book) };
}

/** Whether the phone's workbook says something that its file did not. */
export function isChanged(ancestor: LightBook, phone: LightBook): boolean {
  const { added, changed, removed, inDoubt, book } = mergeBooks(ancestor, phone, ancestor);
  const settings =
    JSON.stringify([...settingsOf(book)]) !== JSON.stringify([...settingsOf(ancestor)]);
  return added + changed + removed + inDoubt.length > 0 || settings;
}

// Tables.

/** A table's rows without the blank ones, its columns that hold formulas left aside. */
interface Filled {
  readonly headers: readonly string[];
  readonly rows: readonly { readonly index: number; readonly cells: Cells }[];
}

const NOTHING: Filled = { headers: [], rows: [] };

function filled(book: LightBook, name: string): Filled {
  const table = TableOfBook.find(book, name);
  if (!table) return NOTHING;
  const { headers, rows } = table.read();
  const typed = headers.flatMap((_, at) => (table.isTyped(at) ? [at] : []));
  return {
    headers: typed.map((at) => headers[at]!),
    rows: rows.flatMap((row, index) => {
      const cells = typed.map((at) => row[at]!);
      return cells.some((cell) => cell !== "") ? [{ index, cells }] : [];
    }),
  };
}

const rowKey = (cells: Cells): string => JSON.stringify(cells);

/** Counts what it is given, and takes away one by one. */
class Counter {
  private readonly counts = new Map<string, number>();
  constructor(keys: readonly string[] = []) {
    keys.forEach((key) => this.add(key));
  }
  add(key: string): void {
    this.counts.set(key, (this.counts.get(key) ?? 0) + 1);
  }
  /** Whether there was one to take. */
  take(key: string): boolean {
    const count = this.counts.get(key) ?? 0;
    if (count > 0) this.counts.set(key, count - 1);
    return count > 0;
  }
}

/** Rows of one that the other lacks, equal rows being counted. */
function surplus(of: Filled, over: Filled): Filled["rows"] {
  const counter = new Counter(over.rows.map(({ cells }) => rowKey(cells)));
  return of.rows.filter(({ cells }) => !counter.take(rowKey(cells)));
}

function mergeTable(
  name: string,
  sameBy: readonly string[],
  ancestor: LightBook,
  phone: LightBook,
  merged: LightBook,
): { added: number; changed: number; removed: number; filesKept: number } {
  const [was, here, there] = [ancestor, phone, merged].map((book) => filled(book, name)) as [
    Filled,
    Filled,
    Filled,
  ];
  const counts = { added: 0, changed: 0, removed: 0, filesKept: 0 };
  if (here === NOTHING || there === NOTHING) return counts;
  const table = TableOfBook.get(merged, name);
  const identity = ({ headers }: Filled) => {
    const at = sameBy.map((header) =>
      headers.findIndex((known) => discKey(known) === discKey(header)),
    );
    return (cells: Cells): string =>
      JSON.stringify(at.map((column) => discKey(String(cells[column] ?? ""))));
  };
  const [here1, there1] = [identity(here), identity(there)];
  const rowOf = (cells: Cells): Row =>
    Object.fromEntries(
      here.headers.flatMap((header, at): [string, CellValue][] =>
        there.headers.some((known) => discKey(known) === discKey(header))
          ? [[header, cells[at]!]]
          : [],
      ),
    );

  const gone = surplus(was, here).map(({ cells }) => cells);
  const unplaced = new Map<string, Cells[]>();
  for (const { cells } of surplus(here, was)) {
    const key = here1(cells);
    unplaced.set(key, [...(unplaced.get(key) ?? []), cells]);
  }
  const free = new Map<string, number[]>();
  for (const { index, cells } of there.rows)
    free.set(rowKey(cells), [...(free.get(rowKey(cells)) ?? []), index]);
  const takeRow = (cells: Cells): number | undefined => free.get(rowKey(cells))?.pop();

  const removals: number[] = [];
  const changes: { readonly index: number; readonly was: Row; readonly becomes: Row }[] = [];
  for (const cells of gone) {
    const becomes = unplaced.get(here1(cells))?.shift();
    const index = takeRow(cells);
    if (index === undefined) {
      // The desk changed or removed it as well.
      if (becomes) {
        const isThere = there.rows.some((row) => there1(row.cells) === here1(cells));
        if (isThere) counts.filesKept += 1;
        else unplaced.get(here1(becomes))!.push(becomes);
      }
    } else if (becomes) changes.push({ index, was: {}, becomes: rowOf(becomes) });
    else removals.push(index);
  }
  const newThere = new Counter(surplus(there, was).map(({ cells }) => there1(cells)));
  const additions = [...unplaced.values()].flat().filter((cells) => !newThere.take(here1(cells)));

  table.change(changes);
  if (removals.length > 0) table.remove(removals.map((index) => ({ index, was: {} })));
  if (additions.length > 0) table.add(additions.map(rowOf));
  return {
    ...counts,
    added: additions.length,
    changed: changes.length,
    removed: removals.length,
  };
}

// Settings.

/** Name under which the rows of putts are one setting. */
const PUTTING = "Putting";

/** Values by label; the putting table, which has no labels, as one text. */
function settingsOf(book: LightBook): Map<string, CellValue> {
  const range = rangeAt(book, "Settings");
  const settings = new Map<string, CellValue>();
  if (!range) return settings;
  const putts: Cells[] = [];
  for (const [label, value = ""] of readRange(range)) {
    if (typeof label === "string" && headingOf(label, SETTING_LABELS)) {
      if (discKey(label) !== discKey(PUTTING)) settings.set(label, value);
    } else if (label !== "") putts.push([label!, value]);
  }
  settings.set(PUTTING, JSON.stringify(putts));
  return settings;
}

/** Takes over what only the phone changed; answers what both did. */
function mergeSettings(ancestor: LightBook, phone: LightBook, merged: LightBook): SettingInDoubt[] {
  const [was, here, there] = [ancestor, phone, merged].map(settingsOf);
  const inDoubt: SettingInDoubt[] = [];
  for (const [label, onPhone] of here!) {
    const [before, inFile] = [was!.get(label), there!.get(label)];
    if (inFile === undefined || onPhone === inFile || onPhone === before) continue;
    if (inFile === before) writeSetting(merged, label, onPhone);
    else inDoubt.push({ label, onPhone, inFile });
  }
  return inDoubt;
}

/** Puts one setting of the phone in the place of the file's. */
export function settle(book: LightBook, { label, onPhone }: SettingInDoubt): void {
  writeSetting(book, label, onPhone);
}

function writeSetting(book: LightBook, label: string, value: CellValue): void {
  const range = rangeAt(book, "Settings");
  if (!range) return;
  const cells = readRange(range);
  if (label === PUTTING) {
    const first = cells.findIndex(([text]) => discKey(String(text)) === discKey(PUTTING)) + 1;
    const putts = JSON.parse(String(value)) as CellValue[][];
    for (let row = first; row < cells.length; row++) cells[row] = putts[row - first] ?? ["", ""];
  } else for (const row of cells) if (row[0] === label) row[1] = value;
  writeRange(book, "Settings", cells);
}
