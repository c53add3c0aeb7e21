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
