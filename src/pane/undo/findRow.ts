import { sameCell } from "../book/rawBook";
import type { Row, RowAt, TableData } from "../../workbook/port";

/**
 * Where a row stands now: where it stood, or else, should the table have been sorted or rows been
 * moved, the one nearest to there that holds the same. Where none does, its old place, so that the
 * workbook can say that it has changed.
 */
export function findRow(table: TableData, { index, was }: RowAt): number {
  if (holds(table, index, was)) return index;
  const same = table.rows.map((_, at) => at).filter((at) => holds(table, at, was));
  const nearer = (a: number, b: number): number => Math.abs(a - index) - Math.abs(b - index);
  return same.sort(nearer)[0] ?? index;
}

function holds(table: TableData, index: number, was: Row): boolean {
  const cells = table.rows[index];
  if (!cells) return false;
  return Object.entries(was).every(([header, value]) => {
    const at = table.headers.findIndex((known) => sameName(known, header));
    return at >= 0 && sameCell(cells[at]!, value);
  });
}

const sameName = (a: string, b: string): boolean =>
  a.trim().toLowerCase() === b.trim().toLowerCase();
