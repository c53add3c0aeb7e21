/** Throws on their way into the sheet, under whatever headers and units its table has. */
import { discKey } from "../../core/log/names";
import { THROW_HEADERS, type ThrowField, throwLayout } from "../../core/log/readThrows";
import type { Settings, Throw } from "../../core/types";
import type { CellValue, Row, TableData } from "../../workbook/port";
import { type Book, rowIn } from "./book";

export type NewThrow = Omit<Throw, "row">;

/** Digits that survive the way through metres and back. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/** Rows for `addRows`: blanks stay blank, a smooth power is not written. */
export function rowsFor(table: TableData, throws: readonly NewThrow[], settings: Settings): Row[] {
  const layout = throwLayout([table.headers], "log", settings);
  const headers = headersOf(table, settings);
  return throws.map((thrown) => {
    const cells: Record<ThrowField, CellValue> = {
      date: thrown.day ?? "",
      disc: thrown.disc,
      carry: tidy(thrown.carryM / layout.metresPerCarry),
      offline: thrown.offlineM === null ? "" : tidy(thrown.offlineM / layout.metresPerOffline),
      power: thrown.power === 1 ? "" : thrown.power,
      line: thrown.line,
      headwind: tidy(thrown.headwindMps / layout.mpsPerHeadwind) || "",
      rise: tidy(thrown.riseM / layout.metresPerRise) || "",
      player: thrown.player,
      note: thrown.note,
    };
    return Object.fromEntries(
      FIELDS.filter((field) => cells[field] !== "").map((field) => [headers[field], cells[field]]),
    );
  });
}

const FIELDS = Object.keys(THROW_HEADERS) as ThrowField[];

/** The table's own header of each field; ours where it has none, so that the workbook can say so. */
export function headersOf(table: TableData, settings: Settings): Record<ThrowField, string> {
  const { at } = throwLayout([table.headers], "log", settings);
  const ours = (field: ThrowField): string => field[0]!.toUpperCase() + field.slice(1);
  return Object.fromEntries(
    FIELDS.map((field) => [field, table.headers[at[field]] ?? ours(field)]),
  ) as Record<ThrowField, string>;
}

// Recognising throws that are in the log already.

/**
 * For each throw whether the log has it: the same player, date, disc, carry and note. Two equal
 * throws need two in the log, for a carry may well be thrown twice. Throws that were marked off
 * count as being there.
 */
export function doubles(throws: readonly NewThrow[], book: Book): boolean[] {
  const table = book.raw.throws;
  if (!table) return throws.map(() => false);
  const columns = Object.keys(rowsFor(table, [EVERY_FIELD], book.settings)[0]!);
  const counts = new Map<string, number>();
  const keyOf = (cellOf: (column: string) => CellValue): string =>
    JSON.stringify(columns.map((column) => plain(cellOf(column))));
  for (const row of table.rows) {
    const key = keyOf((column) => row[table.headers.indexOf(column)] ?? "");
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return rowsFor(table, throws, book.settings).map((row) => {
    const key = keyOf((column) => row[column] ?? "");
    const left = counts.get(key) ?? 0;
    counts.set(key, left - 1);
    return left > 0;
  });
}

/** Only what makes two throws the same. */
const EVERY_FIELD: NewThrow = {
  disc: "x",
  carryM: 1,
  offlineM: null,
  power: 1,
  line: "",
  headwindMps: 0,
  riseM: 0,
  player: "x",
  day: 1,
  note: "x",
};

/** A hundredth of a unit, and names without regard to case and spaces. */
const plain = (cell: CellValue): CellValue =>
  typeof cell === "number" ? Math.round(cell * 100) / 100 : discKey(String(cell));

/** A carry beyond these shares of the disc's own is more often a slip than a throw. Assumption. */
const LEAST_SHARE = 0.5;
const MOST_SHARE = 1.5;

/**
 * The smooth carry, m, that makes a new carry of this disc look like a slip of the keyboard; null
 * where it does not, and for a disc without throws.
 */
export function usualCarryIfUnlikely(book: Book, disc: string, carryM: number): number | null {
  const row = rowIn(book, disc);
  if (!row) return null;
  const usualM = Math.exp(row.mu);
  const share = carryM / usualM;
  return share < LEAST_SHARE || share > MOST_SHARE ? usualM : null;
}
