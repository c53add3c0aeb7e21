import { messages } from "../messages";
import { describeCell, ErrorCell, isBlank, type PlainCell } from "./cell";

/** What is wrong with a cell that should hold a number, or be there at all. */
export function wrongCell(row: number, what: string, cell: PlainCell): string {
  if (isBlank(cell)) return messages.log.blank(row, what);
  if (cell instanceof ErrorCell) return messages.log.error(row, what, describeCell(cell));
  return messages.log.notNumber(row, what, describeCell(cell));
}
