/** The throw log: cells in, throws and left-out rows out. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cells, LeftOut, Settings, Throw, ThrowLog } from "../types";
import { cellAt, textIn } from "./cellParts";
import { discKeys } from "./discKey";
import { throwLayout, throwsShape } from "./throwColumns";
import { throwRow } from "./throwRow";

/** Where the rows of a log go, one by one. */
export interface ThrowTaker {
  take(thrown: Throw): void;
  leave(row: LeftOut): void;
}

/**
 * Reads a throw log with its header row (columns in any order, in any case, by listed aliases;
 * unknown ones are ignored) or a bare list of disc and carry without one. Distances and wind are in
 * the units of the settings, or in the one that a header names ("Carry (m)"). A row that cannot
 * count is left out with a sentence and never spoils the rest; blank rows are passed over; a blank
 * range is an empty log. Throws an `unusable` error where there is no Disc or Carry column, or for
 * a card, which no longer holds single throws. One pass, linear in rows.
 *
 * @example
 * readThrows([["Disc", "Carry"], ["Copper mid", 301]], DEFAULT_SETTINGS).throws.length // 1
 */
export function readThrows(cells: Cells, settings: Settings): ThrowLog {
  const throws: Throw[] = [];
  const leftOut: LeftOut[] = [];
  passThrows(cells, settings, {
    take: (thrown) => throws.push(thrown),
    leave: (row) => leftOut.push(row),
  });
  return { throws, leftOut };
}

/** What `readThrows` reads, passed on row by row instead of kept. */
export function passThrows(cells: Cells, settings: Settings, taker: ThrowTaker): void {
  const shape = throwsShape(cells);
  if (shape === "card") throw unusable(messages.log.cardForLog());
  if (shape === "blank") return;
  const layout = throwLayout(cells, shape, settings);
  const keyOf = discKeys();
  const reader = { playerKey: settings.player === null ? null : keyOf(settings.player), keyOf };
  for (let index = layout.firstRow; index < cells.length; index++) {
    const row = cells[index]!;
    const read = throwRow(row, index + 1, layout, reader);
    if (typeof read === "string") {
      taker.leave({ row: index + 1, disc: textIn(cellAt(row, layout.at.disc)), reason: read });
    } else if (read !== null) taker.take(read);
  }
}
