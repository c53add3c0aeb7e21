/** Dates as text in one column of a table, where the column as a whole can tell what they mean. */
import { serialDay } from "../log/serialDay";
import { noteDate } from "./noteDate";

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
