/** The card as plain text, for a message. */
import type { Book } from "../book/book";
import { rungsOf } from "../bag/ladder";
import { day, length } from "../words/figures";

/**
 * One line a disc, longest first, in columns that stand straight in a fixed-width font; "" where
 * there is no throw.
 */
export function textCard(book: Book): string {
  const { player, distanceUnit } = book.settings;
  const rungs = rungsOf(book);
  if (rungs.length === 0) return "";
  const wide = Math.max(...rungs.map(({ row }) => row.disc.length));
  const newest = Math.max(...rungs.map(({ row }) => row.lastDay ?? 0));
  const head = [player ?? "", newest > 0 ? day(newest) : ""].filter((part) => part !== "");
  return [
    ["Smooth carry", ...head].join(", "),
    `${distanceUnit} (eight of ten next throws)`,
    "",
    ...rungs.map(({ row, next }) => {
      const range = `${length(next.lowM, distanceUnit)}–${length(next.highM, distanceUnit)}`;
      return `${row.disc.padEnd(wide)}  ${length(next.carryM, distanceUnit).padStart(4)}  (${range})`;
    }),
  ].join("\n");
}
