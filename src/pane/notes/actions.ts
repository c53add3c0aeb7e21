import { rowsFor } from "../book/newThrows";
import { DATA_TABLES } from "../../workbook/blueprint/dataTables";
import { addRows } from "../book/book";
import type { Desk } from "../controller";
import { count } from "../words/figures";
import { PortError } from "../../workbook/port";
import { type UnderstoodRow } from "./model";
import { EMPTY_NOTES, type NotesForm } from "../forms";

export const setNotes = (desk: Desk, part: Partial<NotesForm>): void =>
  desk.change((state) => ({ ...state, notes: { ...state.notes, ...part } }));

/** All rows that are ticked go into the log, as one step. */
export async function addNotes(desk: Desk, rows: readonly UnderstoodRow[]): Promise<void> {
  const { book } = desk.state;
  const taken = rows.filter((row) => row.taken).map(({ thrown }) => thrown);
  if (!book || taken.length === 0) return;
  const done = await desk.work("notes", "Adding the throws", async (port) => {
    const table = book.raw.throws;
    if (!table) throw new PortError("missing", "There is no throw log yet. Make it in Set-up.");
    const cells = rowsFor(table, taken, book.settings);
    const what = count(taken.length, "throw");
    return {
      said: `Added ${what} to the log.`,
      step: {
        place: "notes",
        what,
        changes: [await addRows(port, DATA_TABLES.throws, cells)],
      },
    };
  });
  if (done) setNotes(desk, EMPTY_NOTES);
}
