/** Recognising throws that are in the log already. */
import { discKey } from "../../core/log/names";
import type { Book } from "./book";
import { rowsFor, type NewThrow } from "./newThrows";
import type { CellValue } from "../../workbook/port";

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
