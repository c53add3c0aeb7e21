/** From the invented data to a player's own bag: what goes, and what comes in its place. */
import { discKey } from "../../core/log/names";
import type { BagList, ListedDisc } from "../../core/notes/readBagList";
import type { DiscType } from "../../core/types";
import { STARTER } from "../../workbook/blueprint/content";
import { DATA_PARTS, DATA_TABLES, type DataPart } from "../../workbook/blueprint/dataTables";
import { starterBlueprint } from "../../workbook/blueprint/index";
import { DISC_NAMES } from "../../workbook/blueprint/parts";
import type { TablePlan } from "../../workbook/blueprint/types";
import {
  type CellValue,
  type Row,
  type RowAt,
  sameCell,
  type TableData,
} from "../../workbook/port";
import { type Book, oncePer, type RawBook } from "../book/book";
import type { NewThrow } from "../book/newThrows";

// Which rows of the workbook are the invented ones: those that hold what the starter data holds.

export interface InventedRows {
  readonly table: string;
  readonly rows: readonly RowAt[];
}

const plansByPart = (): ReadonlyMap<DataPart, TablePlan> => {
  const tables = starterBlueprint().sheets.flatMap(({ blocks }) =>
    blocks.filter((block): block is TablePlan => block.kind === "table"),
  );
  return new Map(
    DATA_PARTS.flatMap((part) => {
      const plan = tables.find(({ name }) => name === DATA_TABLES[part]);
      return plan ? [[part, plan] as const] : [];
    }),
  );
};

export const inventedIn = oncePer((raw: RawBook): readonly InventedRows[] =>
  [...plansByPart()].flatMap(([part, plan]) => {
    const table = raw[part];
    const rows = table ? inventedRows(table, plan) : [];
    return rows.length === 0 ? [] : [{ table: DATA_TABLES[part], rows }];
  }),
);

/** Columns with a formula fill themselves, and are no part of what a row was. */
function inventedRows(table: TableData, { columns, rows }: TablePlan): RowAt[] {
  const typed = columns.flatMap(({ header, formula }, at) => (formula ? [] : [{ header, at }]));
  const places = typed.map(({ header, at }) => ({
    header,
    at,
    place: table.headers.findIndex((known) => discKey(known) === discKey(header)),
  }));
  if (places.some(({ place }) => place < 0)) return [];
  const key = (cells: readonly CellValue[]): string => JSON.stringify(cells);
  const left = new Map<string, number>();
  for (const row of rows) {
    const of = key(places.map(({ at }) => row[at] ?? ""));
    left.set(of, (left.get(of) ?? 0) + 1);
  }
  return table.rows.flatMap((row, index): RowAt[] => {
    const of = key(places.map(({ place }) => row[place]!));
    const count = left.get(of) ?? 0;
    if (count === 0) return [];
    left.set(of, count - 1);
    const was: Row = Object.fromEntries(places.map(({ header, place }) => [header, row[place]!]));
    return [{ index, was }];
  });
}

/** Whether every throw of the log is invented: then no answer is the player's own yet. */
export const isInvented = ({ raw }: Book): boolean => {
  const throws = inventedIn(raw).find(({ table }) => table === DATA_TABLES.throws);
  const there = raw.throws?.rows.filter((row) => row.some((cell) => cell !== "")).length ?? 0;
  return throws !== undefined && throws.rows.length === there;
};

/** Cells beside the tables that hold invented values, each with what the starter data has there. */
export const INVENTED_RANGES: readonly {
  readonly ref: string;
  readonly holds: readonly (readonly CellValue[])[];
}[] = [
  { ref: "Putting", holds: STARTER.putting },
  { ref: "PhoneNotes", holds: [[STARTER.notes]] },
];

/** Inputs that name one disc, which must be one of the bag. */
export const discInputs = (): readonly string[] =>
  starterBlueprint().sheets.flatMap(({ name, blocks }) =>
    blocks.flatMap((block) =>
      block.kind === "cells" && block.list === DISC_NAMES ? [`${name}!${block.at}`] : [],
    ),
  );

export const sameCells = (
  one: readonly (readonly CellValue[])[],
  other: readonly (readonly CellValue[])[],
): boolean =>
  one.length === other.length &&
  one.every((row, at) => row.every((cell, column) => sameCell(cell, other[at]?.[column] ?? "")));

// What a pasted list puts into the workbook.

/** Types as the player sets them; a disc's guess holds where there is none. */
export type ChosenTypes = Readonly<Record<string, DiscType | "">>;

export const typeOf = ({ disc, type }: ListedDisc, chosen: ChosenTypes): DiscType | "" =>
  chosen[discKey(disc)] ?? type ?? "";

/** Rows for the bag; discs that are in it already stay as they are. */
export function bagRows(
  { discs }: BagList,
  table: TableData,
  chosen: ChosenTypes,
  staying: readonly string[],
): Row[] {
  const known = new Set(staying.map(discKey));
  const has = (header: string): boolean =>
    table.headers.some((own) => discKey(own) === discKey(header));
  return discs
    .filter(({ disc }) => !known.has(discKey(disc)))
    .map((listed): Row => {
      const { disc, line, weight, note } = listed;
      const cells = {
        Disc: disc,
        Type: typeOf(listed, chosen),
        Line: line,
        Weight: weight ?? "",
        Note: note,
      };
      return Object.fromEntries(
        Object.entries(cells).filter(([header, cell]) => cell !== "" && has(header)),
      );
    });
}

/** What tells these throws from those of a session: they were remembered, on no day. */
const REMEMBERED = "from my list";

export const throwsOf = ({ discs }: BagList, player: string): NewThrow[] =>
  discs.flatMap(({ disc, carriesM }) =>
    carriesM.map((carryM): NewThrow => ({
      disc,
      carryM,
      offlineM: null,
      power: 1,
      line: "",
      headwindMps: 0,
      riseM: 0,
      player,
      day: null,
      note: REMEMBERED,
    })),
  );

// Discs that were thrown and are not in the bag.

export const strangersIn = oncePer(({ bag, log }: Book): readonly string[] => {
  const known = new Set(bag.map(({ disc }) => discKey(disc)));
  const strangers = new Map<string, string>();
  for (const { disc } of log.throws)
    if (!known.has(discKey(disc)) && !strangers.has(discKey(disc)))
      strangers.set(discKey(disc), disc);
  return [...strangers.values()];
});
