/** One throw of the session, from the box to the log, and what may be done about the last one. */
import { discKey, isOff, OFF } from "../../core/log/names";
import { LONGEST_CARRY_M } from "../../core/constants";
import { isCarry } from "../../core/log/cell";
import { throwLayout } from "../../core/log/readThrows";
import type { Settings } from "../../core/types";
import { toMetres, type DistanceUnit } from "../../core/units";
import type { Book } from "../book/book";
import { headersOf, type NewThrow } from "../book/newThrows";
import type { CellValue, Row, RowAt, TableData } from "../../workbook/port";
import { needNumber } from "../words/numberIn";
import type { Session } from "./session";

/** One press of an arrow key, in the distance unit. */
export const OFFLINE_STEP: Readonly<Record<DistanceUnit, number>> = { ft: 5, m: 1 };

/** The throw in the box; what is missing or unclear is thrown as a sentence. */
export function entryOf(session: Session, disc: string, settings: Settings): NewThrow {
  const { distanceUnit } = settings;
  const carry = needNumber(session.carry, "Carry");
  if (carry <= 0) throw new Error("Carry must be above 0.");
  const carryM = toMetres(carry, distanceUnit);
  if (!isCarry(carryM)) {
    const than = carryM > LONGEST_CARRY_M ? "farther" : "shorter";
    throw new Error(`${carry} ${distanceUnit} is ${than} than any throw. Look at the number.`);
  }
  const offline = session.offline;
  return {
    disc,
    carryM,
    offlineM:
      offline === null ? null : toMetres(offline * OFFLINE_STEP[distanceUnit], distanceUnit),
    power: 1,
    line: "",
    headwindMps: session.headwindMps,
    riseM: session.riseM,
    player: settings.player ?? "",
    day: session.day,
    note: "",
  };
}

/** A row of the log as it stands: its number for the core, its cells, and whether it is marked off. */
export interface LoggedRow extends RowAt {
  readonly disc: string;
  readonly carry: CellValue;
  readonly off: boolean;
}

/** Rows of the session's day and player, marked off or not, in the order of the log. */
export function loggedRows(session: Session, { raw, settings }: Book): LoggedRow[] {
  const table = raw.throws;
  if (!table) return [];
  const { at } = throwLayout([table.headers], "log", settings);
  const player = settings.player === null ? null : discKey(settings.player);
  const keyIn = (row: readonly CellValue[], column: number): string =>
    discKey(String(row[column] ?? ""));
  const isMine = (row: readonly CellValue[]): boolean =>
    player === null || ["", player].includes(keyIn(row, at.player));
  return table.rows.flatMap((row, index) => {
    if (row[at.date] !== session.day || !isMine(row)) return [];
    const disc = String(row[at.disc] ?? "");
    const off = isOff(keyIn(row, at.line));
    return [{ index, was: rowAsRead(table, row), disc, carry: row[at.carry] ?? "", off }];
  });
}

/** The change that marks a row off, and what it takes to take that back. */
export function markingOff(
  row: LoggedRow,
  table: TableData,
  settings: Settings,
): { readonly becomes: Row; readonly before: Row; readonly was: Row } {
  const { line } = headersOf(table, settings);
  return {
    becomes: { [line]: OFF },
    before: { [line]: row.was[line] ?? "" },
    was: { ...row.was, [line]: OFF },
  };
}

const rowAsRead = (table: TableData, row: readonly CellValue[]): Row =>
  Object.fromEntries(table.headers.map((header, at) => [header, row[at] ?? ""]));
