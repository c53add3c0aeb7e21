/** From what a cell formula sends to the plain values that the core takes, with errors that name the argument. */
import { unusable } from "../core/errors";
import { parseDirection } from "../core/flight/wind";
import { dateIn, describeCell, ErrorCell, isBlank, plainCell } from "../core/log/cell";
import { messages } from "../core/messages";
import { DISC_TYPES, type Cells, type DiscType } from "../core/types";

/** More cells than this in one argument may not reach us whole: Excel on the web allows 5 MB a request. */
const MOST_CELLS = 12_000_000;

/** A number; a blank gives `fallback`, and where there is none, an error that asks for it. */
export function receiveNumber(value: unknown, name: string, fallback?: number): number {
  const cell = plainCell(value);
  if (isBlank(cell)) {
    if (fallback === undefined) throw unusable(messages.functions.missing(name));
    return fallback;
  }
  if (typeof cell !== "number")
    throw unusable(messages.functions.notNumber(name, describeCell(cell)));
  return cell;
}

/** A number above zero. */
export function receivePositive(value: unknown, name: string): number {
  const number = receiveNumber(value, name);
  if (number <= 0) throw unusable(messages.functions.notPositive(name, number));
  return number;
}

/** A direction: degrees, or a compass point as text. */
export function receiveDirection(value: unknown, name: string): number {
  const cell = plainCell(value);
  if (isBlank(cell)) throw unusable(messages.functions.missing(name));
  if (typeof cell === "number" || typeof cell === "string") return parseDirection(cell, name);
  throw unusable(messages.functions.notDirection(name, describeCell(cell)));
}

/** A serial day, from a date or from year-month-day as text; null for a blank or a 0. */
export function receiveDay(value: unknown, name: string): number | null {
  const cell = plainCell(value);
  const day = dateIn(cell);
  if (Number.isNaN(day)) throw unusable(messages.functions.notDate(name, describeCell(cell)));
  return day || null;
}

/** An angle of sight in degrees, between straight down and straight up; blank is level. */
export function receiveAngle(value: unknown, name: string): number {
  const degrees = receiveNumber(value, name, 0);
  if (Math.abs(degrees) >= 90) throw unusable(messages.functions.notAngle(name, degrees));
  return degrees;
}

/** A whole number from 1; a blank gives `fallback`. */
export function receiveCount(value: unknown, name: string, fallback?: number): number {
  const number = receiveNumber(value, name, fallback);
  if (!Number.isInteger(number) || number < 1)
    throw unusable(messages.functions.notCount(name, number));
  return number;
}

/** Text; a number is taken as it is written. */
export function receiveText(value: unknown, name: string): string {
  const cell = plainCell(value);
  if (cell instanceof ErrorCell || typeof cell === "boolean") {
    throw unusable(messages.functions.notText(name, describeCell(cell)));
  }
  if (isBlank(cell)) throw unusable(messages.functions.missing(name));
  return String(cell);
}

/** A disc type by its word; a blank or a 0 means not given. */
export function receiveType(value: unknown): DiscType | null {
  const cell = plainCell(value);
  if (isBlank(cell) || cell === 0) return null;
  const word = typeof cell === "string" ? cell.trim().toLowerCase() : "";
  const type = DISC_TYPES.find((known) => known === word);
  if (type === undefined) throw unusable(messages.functions.notType(describeCell(cell)));
  return type;
}

/** A range; a blank or a 0 in its place means not given. */
export function receiveCells(value: unknown, name: string): Cells | null {
  if (!Array.isArray(value)) {
    const cell = plainCell(value);
    return isBlank(cell) || cell === 0 ? null : [[value]];
  }
  const rows = (Array.isArray(value[0]) ? value : [value]) as Cells;
  const columns = rows[0]?.length ?? 0;
  if (rows.length * columns > MOST_CELLS) throw unusable(messages.functions.tooLarge(name));
  const only = rows.length === 1 && columns === 1 ? plainCell(rows[0]?.[0]) : null;
  return only !== null && (only === 0 || (typeof only === "string" && isBlank(only))) ? null : rows;
}

/** A range that must be there. */
export function receiveRange(value: unknown, name: string): Cells {
  const cells = receiveCells(value, name);
  if (cells === null) throw unusable(messages.functions.missing(name));
  return cells;
}

/** Lines of text out of one cell or a range: rows become lines, columns are parted by tabs. */
export function receiveLines(value: unknown, name: string): string {
  return receiveRange(value, name)
    .map((row) => row.map((cell) => receiveLine(cell, name)).join("\t"))
    .join("\n");
}

function receiveLine(value: unknown, name: string): string {
  const cell = plainCell(value);
  return isBlank(cell) ? "" : receiveText(cell, name);
}
