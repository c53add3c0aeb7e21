/** Dates as people write them at the head of a line of notes. */
import { serialDay } from "../log/cell";

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const MONTH =
  "(jan(?:uary)?|feb(?:ruary)?|mar(?:ch)?|apr(?:il)?|may|june?|july?|aug(?:ust)?|sept?(?:ember)?" +
  "|oct(?:ober)?|nov(?:ember)?|dec(?:ember)?)\\.?(?![a-z])";
const WEEKDAY = "(?:(?:mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun)(?:day)?\\.?,?\\s+)?";
const YEAR = "(?:,?\\s+(\\d{4}|'?\\d{2}(?!\\d)))?";
const END = "(?:[\\sT]+\\d{1,2}:\\d{2}(?::\\d{2})?)?(?=$|[\\s:,;.–—-])";

const pattern = (body: string): RegExp => new RegExp(`^${WEEKDAY}${body}${END}`, "i");
const YEAR_FIRST = pattern("(\\d{4})[-/.](\\d{1,2})[-/.](\\d{1,2})");
const DAY_THEN_MONTH = pattern(`(\\d{1,2})(?:st|nd|rd|th|\\.)?\\s*(?:of\\s+)?${MONTH}${YEAR}`);
const MONTH_THEN_DAY = pattern(`${MONTH}\\s+(\\d{1,2})(?:st|nd|rd|th)?${YEAR}`);
const DOTTED = pattern("(\\d{1,2})\\.(\\d{1,2})\\.(\\d{4}|\\d{2})");
const SLASHED = pattern("(\\d{1,2})([/-])(\\d{1,2})\\2(\\d{4}|\\d{2})");
/** Two numbers and a slash, and nothing else on the line. */
const SHORT_SLASHED = /^(\d{1,2})\/(\d{1,2})$/;

export interface NoteDate {
  /** As it was written. */
  readonly text: string;
  /** Serial day; null where it cannot be told. */
  readonly day: number | null;
  /** Why it cannot be told. */
  readonly why: "ambiguous" | "no year" | "no such day" | null;
}

/**
 * The date at the beginning of a line, or null where there is none. Read: 2026-05-12; 12 May 2026,
 * May 12th; 12.05.2026 (with points the day is first everywhere); 25/5/2026 either way where only one
 * can be. Weekdays and times beside them are passed over, two-digit years are of this century. A date
 * without a year gets it from `yearOf`, which is asked for the year of a month and day. 5/12/2026 is
 * ambiguous and not guessed.
 */
export function noteDate(
  line: string,
  yearOf: (month: number, day: number) => number | null,
): NoteDate | null {
  const [text, year, month, day] = dateParts(line) ?? [null, null, 0, 0];
  if (text === null) return null;
  if (month === null) return { text, day: null, why: "ambiguous" };
  const known = year ?? yearOf(month, day);
  if (known === null) return { text, day: null, why: "no year" };
  const serial = serialDay(known, month, day);
  return { text, day: serial, why: serial === null ? "no such day" : null };
}

/** A year with a 29 February, for dates that leave their year out. */
const SOME_LEAP_YEAR = 2024;

/** Inside a line what follows a comma is more likely the next figure than a year of two digits. */
const NUMBER_AFTER_COMMA = /,\s+'?\d{2}$/;

/**
 * The date that a later part of a line begins with, as it is written; null where it is none, or where
 * its numbers can only be carries, as in "91/95/88".
 */
export function dateWithin(rest: string): string | null {
  const [text, year, month, day] = dateParts(rest) ?? [null, null, null, 0];
  if (text === null || month === null) return text;
  const named = /\p{L}{3}/u.test(text) && day >= 1 && day <= 31;
  if (named) return text.replace(NUMBER_AFTER_COMMA, "");
  return serialDay(year ?? SOME_LEAP_YEAR, month, day) !== null ? text : null;
}

type Parts = readonly [text: string, year: number | null, month: number | null, day: number];

function dateParts(line: string): Parts | null {
  const found = (expression: RegExp): RegExpExecArray | null => expression.exec(line);
  let match = found(YEAR_FIRST);
  if (match) return [match[0], Number(match[1]), Number(match[2]), Number(match[3])];
  match = found(DAY_THEN_MONTH);
  if (match) return [match[0], fullYear(match[3]), monthNamed(match[2]!), Number(match[1])];
  match = found(MONTH_THEN_DAY);
  if (match) return [match[0], fullYear(match[3]), monthNamed(match[1]!), Number(match[2])];
  match = found(DOTTED);
  if (match) return [match[0], fullYear(match[3]), Number(match[2]), Number(match[1])];
  match = found(SLASHED);
  if (match) return inEitherOrder(match[0], fullYear(match[4]), Number(match[1]), Number(match[3]));
  match = found(SHORT_SLASHED);
  return match && inEitherOrder(match[0], null, Number(match[1]), Number(match[2]));
}

/** Day and month where only one order makes a date, or both the same one. */
function inEitherOrder(text: string, year: number | null, one: number, other: number): Parts {
  if (one === other || one > 12) return [text, year, other, one];
  return other > 12 ? [text, year, one, other] : [text, year, null, one];
}

const monthNamed = (name: string): number => MONTHS.indexOf(name.slice(0, 3).toLowerCase()) + 1;

function fullYear(text: string | undefined): number | null {
  if (text === undefined) return null;
  const year = Number(text.replace("'", ""));
  return year < 100 ? 2000 + year : year;
}

// Which year a date without one means.

/**
 * The year in which a month and day lie nearest to a serial day, or, where `noLater` is set, latest
 * before it or on it. null where there is no such day in the years around.
 */
export function yearNear(
  month: number,
  day: number,
  serial: number,
  noLater: boolean,
): number | null {
  const around = Math.round(1900 + serial / 365.2425);
  let best: number | null = null;
  let leastAway = Infinity;
  for (let year = around - 4; year <= around + 4; year++) {
    const candidate = serialDay(year, month, day);
    if (candidate === null || (noLater && candidate > serial)) continue;
    const away = Math.abs(candidate - serial);
    if (away < leastAway) [best, leastAway] = [year, away];
  }
  return best;
}

// Dates as text in one column of a table, where the column as a whole can tell what they mean.

/** Two numbers, then a year of four digits: either of the two may be the day. */
const EITHER_ORDER = /^(\d{1,2})([/-])(\d{1,2})\2(\d{4})(?:[\sT]+\d{1,2}:\d{2}(?::\d{2})?)?$/;
/** The same with a year of two digits, which might be a day too. */
const SHORT_YEAR = /^\d{1,2}([/-])\d{1,2}\1\d{2}(?!\d)/;

type Order = "day first" | "month first";

/**
 * Serial days of the dates in a column; null for a text that is none, or whose day and month cannot
 * be told apart. One value above 12 tells the order for the whole column; values that contradict one
 * another tell nothing. With points the day is first; the year first, or the month by name, is plain.
 *
 * @example
 * daysInColumn(["11/1/2026", "11/13/2026"]) // [46327, 46339]
 */
export function daysInColumn(texts: readonly string[]): (number | null)[] {
  const order = orderIn(texts);
  return texts.map((text) => dayIn(text.trim(), order));
}

/** Whether a text is a date that can be read in two ways. */
export const isTwofold = (text: string): boolean =>
  dayIn(text.trim(), null) === null &&
  dayIn(text.trim(), "day first") !== null &&
  dayIn(text.trim(), "month first") !== null;

function orderIn(texts: readonly string[]): Order | null {
  const found = new Set<Order>();
  for (const text of texts) {
    const [one, other] = partsOf(text.trim());
    if (one! > 12) found.add("day first");
    if (other! > 12) found.add("month first");
  }
  return found.size === 1 ? [...found][0]! : null;
}

function dayIn(text: string, order: Order | null): number | null {
  const [one, other, year] = partsOf(text);
  if (one === undefined) {
    const date = SHORT_YEAR.test(text) ? null : noteDate(text, () => null);
    return date?.text === text ? date.day : null;
  }
  const dayFirst = serialDay(year!, other!, one);
  const monthFirst = serialDay(year!, one, other!);
  if (order === "day first") return dayFirst;
  if (order === "month first") return monthFirst;
  if (dayFirst === monthFirst) return dayFirst;
  return dayFirst === null || monthFirst === null ? (dayFirst ?? monthFirst) : null;
}

/** First number, second number and year of a date in either order; nothing for any other text. */
function partsOf(text: string): number[] {
  const match = EITHER_ORDER.exec(text);
  return match ? [match[1], match[3], match[4]].map(Number) : [];
}
