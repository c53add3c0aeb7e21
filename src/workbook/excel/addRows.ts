import { PortError, type Row } from "../port";
import { sentences } from "../sentences";
import { restoring, VALUES, valuesOf } from "./cells";
import { loadTable, type FoundTable } from "./readTable";
import { filledRows, placed, runsOf } from "./rows";
import { syncQuietly, type Work } from "./session";
import { wholeOrNone } from "./wholeOrNone";

/**
 * Puts rows under the last typed one: first into blank rows, then the table is made longer. Two
 * syncs: one that reads the table and the space below it, one that writes.
 */
export const addRows =
  (name: string, rows: readonly Row[]): Work<number[]> =>
  async (context) => {
    const found = loadTable(context, name);
    const below = context.workbook.tables.getItem(name).getRange().getRowsBelow(rows.length);
    below.load(VALUES);
    await context.sync();
    const table = found();
    const cells = rows.map((row) => placed(table, row));
    const first = filledRows(table);
    const longer = first + rows.length - table.rows.length;
    if (longer > 0) requireRoom(table, valuesOf(below).slice(0, longer));

    await wholeOrNone(
      async () => {
        if (longer > 0) lengthen(table, longer);
        cells.forEach((row, index) => {
          for (const { column, values } of runsOf(row))
            table.body.getCell(first + index, column).getResizedRange(0, values.length - 1).values =
              [values];
        });
        await syncQuietly(context);
      },
      (again) => restore(again, table, first, longer),
    );
    return rows.map((_, index) => first + index);
  };

function requireRoom(table: FoundTable, below: readonly (readonly unknown[])[]): void {
  if (below.some((row) => row.some((value) => value !== "")))
    throw new PortError("invalid", sentences.noRoom(table.name));
}

/** New rows take the look and the formulas of the last one; Excel alone does so only for typed rows. */
function lengthen({ table, range, body, computed, formulas }: FoundTable, by: number): void {
  table.resize(range.getResizedRange(by, 0));
  const last = body.getLastRow();
  const added = last.getOffsetRange(1, 0).getResizedRange(by - 1, 0);
  added.copyFrom(last, "Formats");
  computed.forEach((is, column) => {
    if (is && formulas.length > 0)
      added.getColumn(column).copyFrom(last.getColumn(column), "Formulas");
  });
}

/** Back to the old length; blank rows that were used are blank again. */
function restore(
  context: Excel.RequestContext,
  { name, rows, formulas, computed, headers }: FoundTable,
  first: number,
  longer: number,
): void {
  const table = context.workbook.tables.getItem(name);
  const top = table.getHeaderRowRange();
  const old = top.getResizedRange(rows.length, 0);
  if (longer > 0) {
    table.resize(old);
    top
      .getOffsetRange(rows.length + 1, 0)
      .getResizedRange(longer - 1, 0)
      .clear();
  }
  for (let row = first; row < rows.length; row++)
    for (let column = 0; column < headers.length; column++)
      if (!computed[column])
        top.getCell(row + 1, column).values = [
          [restoring(formulas[row]?.[column], rows[row]![column]!)],
        ];
}
