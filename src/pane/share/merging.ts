/** A partner's throws, from what was pasted or from another table, laid beside ours. */
import { findColumns } from "../../core/log/headings";
import { THROW_HEADERS } from "../../core/log/readThrows";
import { discKey } from "../../core/log/names";
import type { Cells } from "../../core/types";
import { mergeThrows, type Merge } from "../../workbook/merge";
import { separatedCells } from "../../workbook/separatedCells";
import { attempt, type Answer } from "../attempt";
import type { Book } from "../book/book";
import { oncePerPair } from "../book/oncePer";
import { cellsOf } from "../book/rawBook";
import type { ShareForm } from "./form";

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
