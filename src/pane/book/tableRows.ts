/** Adding rows, as a change that can be taken back. */
import type { Row, WorkbookPort } from "../../workbook/port";
import type { Change } from "../undo/step";

export async function addRows(
  port: WorkbookPort,
  table: string,
  rows: readonly Row[],
): Promise<Change> {
  const indexes = await port.addRows(table, rows);
  return { kind: "added", table, rows: rows.map((was, at) => ({ index: indexes[at]!, was })) };
}
