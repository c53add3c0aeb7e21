import type { RowAt } from "../port";
import { restoring } from "./cells";
import { loadTable, type FoundTable } from "./readTable";
import { requireUnchanged } from "./rows";
import { syncQuietly, type Work } from "./session";
import { wholeOrNone } from "./wholeOrNone";

/** Removes rows that still hold what was read; a table that loses all keeps one blank row. Two syncs. */
export const removeRows =
  (name: string, rows: readonly RowAt[]): Work<void> =>
  async (context) => {
    const found = loadTable(context, name);
    await context.sync();
    const table = found();
    rows.forEach((row) => requireUnchanged(table, row));
    const gone = [...new Set(rows.map(({ index }) => index))].sort((a, b) => b - a);
    if (gone.length === 0) return;
    const losesAll = gone.length === table.rows.length;
    const deleted = losesAll ? gone.slice(0, -1) : gone;

    await wholeOrNone(
      async () => {
        for (const index of deleted) table.table.rows.getItemAt(index).delete();
        if (losesAll)
          table.computed.forEach((is, column) => {
            if (!is) table.body.getCell(0, column).clear("Contents");
          });
        await syncQuietly(context);
      },
      (again) => bringBack(again, table, deleted),
    );
  };

/** Rows went from the last to the first, so the missing ones are the first of the list. */
async function bringBack(
  context: Excel.RequestContext,
  { name, rows, formulas }: FoundTable,
  deleted: readonly number[],
): Promise<void> {
  const table = context.workbook.tables.getItem(name);
  const count = table.rows.getCount();
  await context.sync();
  const missing = deleted.slice(0, rows.length - count.value).reverse();
  const cellsOf = (index: number): (string | number | boolean)[] =>
    rows[index]!.map((value, column) => restoring(formulas[index]?.[column], value));
  for (const index of missing) table.rows.add(index, [cellsOf(index)]);
  table.getDataBodyRange().getRow(0).values = [cellsOf(0)];
}
