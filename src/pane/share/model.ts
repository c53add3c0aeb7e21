/** The card as plain text, for a message. */
import { findColumns } from "../../core/log/headings";
import { discKey } from "../../core/log/names";
import { THROW_HEADERS } from "../../core/log/readThrows";
import type { Cells } from "../../core/types";
import { type Merge, mergeThrows } from "../../workbook/merge";
import { separatedCells } from "../../workbook/separatedCells";
import { rungsOf } from "../bag/model";
import { type Book, cellsOf, oncePerPair } from "../book/book";
import { type Answer, attempt } from "../controller";
import type { ShareForm } from "../forms";
import { day, length } from "../words/figures";

// A partner's throws, from what was pasted or from another table, laid beside ours.

/** What would be added; null where there is nothing to read yet. */
export const mergingOf = oncePerPair((form: ShareForm, book: Book): Answer<Merge> | null => {
  if (form.table === "" && form.text.trim() === "") return null;
  return attempt(() => {
    const log = form.table === "" ? separatedCells(form.text) : form.cells;
    const settings = {
      ...book.settings,
      player: onlyPlayer(log),
      distanceUnit: form.distanceUnit ?? book.settings.distanceUnit,
      windUnit: form.windUnit ?? book.settings.windUnit,
    };
    const ours = { log: cellsOf(book.raw.throws), settings: book.settings };
    return mergeThrows(ours, { log, settings }, form.partner);
  });
});

/** What the partner calls themself there: the one name in the column Player, should there be one only. */
function onlyPlayer(log: Cells): string | null {
  const column = findColumns(log[0] ?? [], THROW_HEADERS).player;
  if (!column) return null;
  const names = new Map<string, string>();
  for (const row of log.slice(1)) {
    const name = String(row[column.index] ?? "");
    if (name.trim() !== "") names.set(discKey(name), name);
  }
  return names.size === 1 ? [...names.values()][0]! : null;
}

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
