import { sameCell } from "../book/rawBook";
import { PortError, type TableData, type WorkbookPort } from "../../workbook/port";
import { findRow } from "./findRow";
import type { Change } from "./step";

/** Takes changes back, the last one first, unless the workbook no longer holds what they left there. */
export async function takeBack(port: WorkbookPort, changes: readonly Change[]): Promise<void> {
  for (const change of [...changes].reverse()) await takeBackOne(port, change);
}

async function takeBackOne(port: WorkbookPort, change: Change): Promise<void> {
  if (change.kind === "replaced") return change.bringBack();
  if (change.kind === "wrote") return writeBack(port, change);
  const table = await needTable(port, change.table);
  if (change.kind === "added") {
    const rows = change.rows.map((row) => ({ ...row, index: findRow(table, row) }));
    return port.removeRows(change.table, rows);
  }
  const rows = change.rows.map((row) => ({
    index: findRow(table, row),
    was: row.was,
    becomes: row.before,
  }));
  return port.changeRows(change.table, rows);
}

async function needTable(port: WorkbookPort, name: string): Promise<TableData> {
  const table = await port.readTable(name);
  if (!table) throw new PortError("missing", `There is no table ${name} any more.`);
  return table;
}

async function writeBack(
  port: WorkbookPort,
  { ref, cells }: Extract<Change, { kind: "wrote" }>,
): Promise<void> {
  const found = await port.readRange(ref);
  const same = cells.every(({ row, column, now }) => {
    const cell = found?.[row]?.[column];
    return cell !== undefined && sameCell(cell, now);
  });
  if (!found || !same)
    throw new PortError("changed", `${ref} has changed meanwhile. Nothing was taken back.`);
  for (const { row, column, before } of cells) found[row]![column] = before;
  return port.writeRange(ref, found);
}
