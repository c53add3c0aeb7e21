import {
  type CellValue,
  PortError,
  type Row,
  type RowAt,
  sameCell,
  type TableData,
  type WorkbookPort,
} from "../../workbook/port";
import type { Place } from "../places";

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

/** What was changed, with all that it takes to take it back. */
export type Change =
  | { readonly kind: "added"; readonly table: string; readonly rows: readonly RowAt[] }
  | {
      readonly kind: "changed";
      readonly table: string;
      /** `was` is what the row holds since; `before` what it held earlier. */
      readonly rows: readonly (RowAt & { readonly before: Row })[];
    }
  | { readonly kind: "removed"; readonly table: string; readonly rows: readonly RowAt[] }
  | {
      /** Cells of a range, by row and column from 0. */
      readonly kind: "wrote";
      readonly ref: string;
      readonly cells: readonly {
        readonly row: number;
        readonly column: number;
        readonly before: CellValue;
        readonly now: CellValue;
      }[];
    }
  | {
      /** Whole sheets, by whoever surrounds the pane, who alone can bring the old ones back. */
      readonly kind: "replaced";
      readonly bringBack: () => Promise<void>;
    };

/** One thing that the player did in the pane. */
export interface Step {
  readonly place: Place;
  /** What was done, as "Copper mid 301". */
  readonly what: string;
  /** In the order they were made. */
  readonly changes: readonly Change[];
}

/** The latest step of a place; null where there is none. */
export const lastOf = (steps: readonly Step[], place: Place): Step | null =>
  [...steps].reverse().find((step) => step.place === place) ?? null;

/** Takes changes back, the last one first, unless the workbook no longer holds what they left there. */
export async function takeBack(port: WorkbookPort, changes: readonly Change[]): Promise<void> {
  for (const change of [...changes].reverse()) await takeBackOne(port, change);
}

async function takeBackOne(port: WorkbookPort, change: Change): Promise<void> {
  if (change.kind === "replaced") return change.bringBack();
  if (change.kind === "wrote") return writeBack(port, change);
  const table = await needTable(port, change.table);
  if (change.kind === "removed") {
    await port.addRows(
      change.table,
      change.rows.map(({ was }) => withoutBlanks(was)),
    );
    return;
  }
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

const withoutBlanks = (row: Row): Row =>
  Object.fromEntries(Object.entries(row).filter(([, cell]) => cell !== ""));

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
