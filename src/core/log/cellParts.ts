/** What a plain cell holds as a number, a day, or text; NaN where it holds something else. */
import type { Cell } from "../types";
import { isBlank, plainCell, type PlainCell } from "./cell";
import { dayFromIso } from "./serialDay";

/** The plain form of one cell of a row; blank where the range has no such column (index −1). */
export const cellAt = (cells: readonly Cell[], index: number): PlainCell =>
  index < 0 ? "" : plainCell(cells[index]);

/** The number in a cell, `blank` for a blank one, NaN for text, a boolean or an error. */
export function numberIn(cell: PlainCell, blank: number): number {
  if (typeof cell === "number") return cell;
  return isBlank(cell) ? blank : NaN;
}

/** The serial day in a cell, from a number or from ISO 8601 text; 0 for a blank, NaN for all else. */
export function dateIn(cell: PlainCell): number {
  if (typeof cell === "number") return cell >= 0 && cell <= LAST_DAY ? cell : NaN;
  if (typeof cell !== "string") return NaN;
  return isBlank(cell) ? 0 : (dayFromIso(cell) ?? NaN);
}

/** 31 December 9999, the last day that spreadsheets know. */
const LAST_DAY = 2_958_465;

/** The text in a cell without outer spaces; a number as it is written. A 0 and an error read as "". */
export function textIn(cell: PlainCell): string {
  if (typeof cell === "string") return cell.trim();
  return typeof cell === "object" || cell === 0 ? "" : String(cell);
}
