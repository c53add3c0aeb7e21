/** The workbook as the core understands it. Every place of the pane answers from this. */
import { makeCard } from "../../core/carry/card";
import { headingOf } from "../../core/log/headings";
import { discKey } from "../../core/log/names";
import { readBag } from "../../core/log/readBag";
import { readCourse } from "../../core/log/readCourse";
import { readPutts, readRounds } from "../../core/log/readRounds";
import { DEFAULT_SETTINGS, readSettings } from "../../core/log/readSettings";
import { readThrows } from "../../core/log/readThrows";
import { SETTING_LABELS, type SettingName, settingRule } from "../../core/log/settingsTable";
import type {
  BagDisc,
  Card,
  CardRow,
  Hole,
  PuttRow,
  RoundRow,
  Settings,
  ThrowLog,
} from "../../core/types";
import {
  DATA_PARTS,
  DATA_TABLES,
  type DataPart,
  forEachTable,
} from "../../workbook/blueprint/dataTables";
import {
  type CellValue,
  PortError,
  type Row,
  sameCell,
  type TableData,
  type Together,
  type WorkbookPort,
} from "../../workbook/port";
import { attempt } from "../controller";
import type { Change } from "../undo/takeBack";

// What the pane reads from the workbook, as it stands there.

export interface RawBook extends Readonly<Record<DataPart, TableData | null>> {
  readonly settings: readonly (readonly CellValue[])[] | null;
  /** Tables that are not among ours; a partner's throws may stand in one. */
  readonly otherTables: readonly string[];
}

export const SETTINGS = "Settings";

export async function readRawBook(port: WorkbookPort): Promise<RawBook> {
  const wanted = DATA_PARTS.map((part) => DATA_TABLES[part]);
  const {
    tables: data,
    ranges,
    tableNames: tables,
  } = await (port.readTogether
    ? port.readTogether(wanted, [SETTINGS])
    : readOneByOne(port, wanted, [SETTINGS]));
  const settings = ranges[0]!;
  const ours = new Set(Object.values(DATA_TABLES).map((name) => name.toLowerCase()));
  const otherTables = tables.filter((name) => !ours.has(name.toLowerCase()));
  const byPart = forEachTable((_, part) => data[DATA_PARTS.indexOf(part)]!);
  return { ...byPart, settings, otherTables };
}

async function readOneByOne(
  port: WorkbookPort,
  tables: readonly string[],
  ranges: readonly string[],
): Promise<Together> {
  const [found, cells, tableNames] = await Promise.all([
    Promise.all(tables.map((name) => port.readTable(name))),
    Promise.all(ranges.map((ref) => port.readRange(ref))),
    port.tableNames(),
  ]);
  return { tables: found, ranges: cells, tableNames };
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

export interface Book {
  readonly raw: RawBook;
  readonly settings: Settings;
  readonly bag: readonly BagDisc[];
  readonly log: ThrowLog;
  readonly card: Card;
  readonly holes: readonly Hole[];
  readonly rounds: readonly RoundRow[];
  readonly putts: readonly PuttRow[];
  /** What could not be read, each with the reason; that part then counts as empty. */
  readonly faults: readonly string[];
}

const EMPTY_LOG: ThrowLog = { throws: [], leftOut: [] };

export function bookOf(raw: RawBook): Book {
  const faults: string[] = [];
  const read = <Part>(ask: () => Part, empty: Part): Part => {
    const answer = attempt(ask);
    if (answer.ok) return answer.value;
    faults.push(answer.why);
    return empty;
  };
  const settings = read(() => readSettings(raw.settings ?? []), DEFAULT_SETTINGS);
  const bag = raw.bag ? read(() => readBag(cellsOf(raw.bag)), []) : [];
  const log = raw.throws
    ? read(() => readThrows(cellsOf(raw.throws), settings), EMPTY_LOG)
    : EMPTY_LOG;
  return {
    raw,
    settings,
    bag,
    log,
    card: read(() => makeCard(log, bag, settings), makeCard(EMPTY_LOG, bag, settings)),
    holes: raw.course ? read(() => readCourse(cellsOf(raw.course), settings), []) : [],
    rounds: raw.results ? read(() => readRounds(cellsOf(raw.results), settings), []) : [],
    putts: raw.putts ? read(() => readPutts(cellsOf(raw.putts), settings), []) : [],
    faults,
  };
}

/** Stands in until the workbook has been read. */
export const UNREAD_BOOK: Book = {
  raw: { ...forEachTable(() => null), settings: null, otherTables: [] },
  settings: DEFAULT_SETTINGS,
  bag: [],
  log: EMPTY_LOG,
  card: { rows: [], population: { scale: DEFAULT_SETTINGS.usualSpread, freedom: 4 }, leftOut: [] },
  holes: [],
  rounds: [],
  putts: [],
  faults: [],
};

/** The disc's row of the card; null for one without throws that count. */
export const rowIn = ({ card }: Book, disc: string): CardRow | null =>
  card.rows.find((row) => discKey(row.disc) === discKey(disc)) ?? null;

// Adding rows, as a change that can be taken back.

export async function addRows(
  port: WorkbookPort,
  table: string,
  rows: readonly Row[],
): Promise<Change> {
  const indexes = await port.addRows(table, rows);
  return { kind: "added", table, rows: rows.map((was, at) => ({ index: indexes[at]!, was })) };
}

// Writing one setting into the range Settings.

/** Writes settings by their names; a range that lacks one of the labels is left as it was. */
export async function writeSettings(
  port: WorkbookPort,
  values: Readonly<Partial<Record<SettingName, CellValue>>>,
): Promise<Change> {
  const range = await port.readRange(SETTINGS);
  if (!range) throw new PortError("missing", "There is no range Settings. Make it in Set-up.");
  const cells = Object.entries(values).map(([name, now]) => {
    const row = range.findIndex(([label]) => headingOf(label, SETTING_LABELS)?.field === name);
    if (row < 0)
      throw new PortError("missing", `Settings has no ${settingRule(name as SettingName).label}.`);
    return { row, column: 1, before: range[row]![1]!, now };
  });
  for (const { row, column, now } of cells) range[row]![column] = now;
  await port.writeRange(SETTINGS, range);
  return { kind: "wrote", ref: SETTINGS, cells };
}

/**
 * Works something out once for each value it is asked about, and forgets it with that value.
 * For what takes longer than a redraw may: coverage, worth, the plan.
 */
export function oncePer<Key extends object, Value>(work: (key: Key) => Value): (key: Key) => Value {
  const known = new WeakMap<Key, { readonly value: Value }>();
  return (key) => {
    let found = known.get(key);
    if (!found) known.set(key, (found = { value: work(key) }));
    return found.value;
  };
}

/** The same for what depends on two things. */
export function oncePerPair<One extends object, Other extends object, Value>(
  work: (one: One, other: Other) => Value,
): (one: One, other: Other) => Value {
  const byOne = oncePer((one: One) => oncePer((other: Other) => work(one, other)));
  return (one, other) => byOne(one)(other);
}
