import { daysInColumn } from "../../core/notes/noteDate";
import type { CellValue } from "../port";

/** Rows whose first cell is the date, with dates as text made days where the column tells which. */
export function withDays(rows: readonly (readonly CellValue[])[]): CellValue[][] {
  const days = daysInColumn(rows.map(([date]) => (typeof date === "string" ? date : "")));
  return rows.map(([date = "", ...rest], index) => [days[index] ?? date, ...rest]);
}
