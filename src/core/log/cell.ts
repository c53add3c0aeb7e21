/** Which figures a row can hold; others are slips of the keyboard or of the unit. */
import { LEAST_POWER, LONGEST_CARRY_M, MOST_POWER, SHORTEST_CARRY_M } from "../constants";
import { messages } from "../messages";
import type { Cell, Cells } from "../types";

/**
 * What a spreadsheet may send as one cell, brought to one plain form. A blank comes as null,
 * undefined or ""; a single cell may come as a 1 × 1 array; a rich value (a currency, a linked
 * type) as an object with `basicValue`; an error cell as an object with a code.
 */
export type PlainCell = string | number | boolean | ErrorCell;

/** An error cell: its code as the sheet shows it, such as "#REF!". */
export class ErrorCell {
  constructor(readonly code: string) {}
}

interface RichCell {
  readonly basicValue?: unknown;
  readonly basicType?: unknown;
  readonly code?: unknown;
  readonly error?: unknown;
}

const errorCode = (rich: RichCell): string => {
  const code = [rich.code, rich.error, rich.basicValue].find(
    (part) => typeof part === "string" && part.startsWith("#"),
  );
  return typeof code === "string" ? code : "#VALUE!";
};

/** The plain form of a cell; "" for a blank. Numbers that are not finite are error cells. */
export function plainCell(cell: unknown): PlainCell {
  if (typeof cell === "string" || typeof cell === "boolean") return cell;
  if (typeof cell === "number") return Number.isFinite(cell) ? cell : new ErrorCell("#NUM!");
  if (cell === null || cell === undefined) return "";
  if (cell instanceof ErrorCell) return cell;
  if (Array.isArray(cell)) {
    return cell.length === 1 ? plainCell(cell[0]) : new ErrorCell("#VALUE!");
  }
  if (typeof cell !== "object") return new ErrorCell("#VALUE!");
  const rich = cell as RichCell;
  const holdsError =
    rich.basicType === "Error" || rich.code !== undefined || rich.error !== undefined;
  return holdsError || rich.basicValue === undefined || typeof rich.basicValue === "object"
    ? new ErrorCell(errorCode(rich))
    : plainCell(rich.basicValue);
}

/** Whether a plain cell is blank: empty text, or nothing but white space. */
export const isBlank = (cell: PlainCell): boolean =>
  typeof cell === "string" && (cell === "" || cell.trim() === "");

/** How a cell is named in a sentence: its kind and, for text, the start of it. */
export function describeCell(cell: PlainCell): string {
  if (cell instanceof ErrorCell) return `an error, ${cell.code}`;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  if (typeof cell === "number") return `${cell}`;
  const shown = cell.length > 40 ? `${cell.slice(0, 39)}…` : cell;
  return isBlank(cell) ? "blank" : `text, '${shown}'`;
}

/**
 * The serial number by which spreadsheets hold a day: 1 March 1900 is 61, in every program.
 * Gregorian calendar; null where there is no such day or it lies before that date.
 * Method: days from civil date by counting in 400-year cycles that begin on 1 March.
 *
 * @example
 * serialDay(2026, 5, 12) // 46154
 */
export function serialDay(year: number, month: number, day: number): number | null {
  if (![year, month, day].every(Number.isInteger)) return null;
  if (year > 9999 || month < 1 || month > 12 || day < 1 || day > monthLength(year, month)) {
    return null;
  }
  const marchYear = month > 2 ? year : year - 1;
  const monthsSinceMarch = (month + 9) % 12;
  const dayOfYear = Math.floor((153 * monthsSinceMarch + 2) / 5) + day - 1;
  const leapDays =
    Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  const serial = 365 * marchYear + leapDays + dayOfYear - DAYS_TO_1900;
  return serial >= FIRST_AGREED_DAY ? serial : null;
}

/** Spreadsheets disagree, or are wrong, about the days before 1 March 1900. */
const FIRST_AGREED_DAY = 61;
/** From 1 March of the year 0 to the day before 1 January 1900, less the day 29 February 1900 that never was. */
const DAYS_TO_1900 = 693_899;

function monthLength(year: number, month: number): number {
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  if (month === 2) return leap ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}

/**
 * The serial day of an ISO 8601 date, "2026-05-12": the one way to write a date as text that means
 * the same day everywhere. null for anything else.
 */
export function dayFromIso(text: string): number | null {
  const parts = /^\s*(\d{4})-(\d{1,2})-(\d{1,2})\s*$/.exec(text);
  return parts && serialDay(Number(parts[1]), Number(parts[2]), Number(parts[3]));
}

// What a plain cell holds as a number, a day, or text; NaN where it holds something else.

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

/** What is wrong with a cell that should hold a number, or be there at all. */
export function wrongCell(row: number, what: string, cell: PlainCell): string {
  if (isBlank(cell)) return messages.log.blank(row, what);
  if (cell instanceof ErrorCell) return messages.log.error(row, what, describeCell(cell));
  return messages.log.notNumber(row, what, describeCell(cell));
}

export const isCarry = (carryM: number): boolean =>
  carryM >= SHORTEST_CARRY_M && carryM <= LONGEST_CARRY_M;

/** A power of 0 is a blank, which means smooth. */
export const isPower = (power: number): boolean =>
  power === 0 || (power >= LEAST_POWER && power <= MOST_POWER);

/**
 * Whether the host sends blank cells as the number 0, as some do: then a 0 stands where only text
 * belongs. There, a figure of 0 that could also be a blank must be taken as one. `textColumns` are
 * indexes; −1 is none.
 */
export function blanksAreZero(cells: Cells, textColumns: readonly number[]): boolean {
  const columns = textColumns.filter((column) => column >= 0);
  for (const row of cells) {
    for (const column of columns) if (row[column] === 0) return true;
  }
  return false;
}
