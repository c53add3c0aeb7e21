import type { Row, RowAt } from "../port";
import { restoring } from "./cells";
import { loadTable } from "./readTable";
import { placed, requireUnchanged, runsOf } from "./rows";
import { syncQuietly, type Work } from "./session";
import { wholeOrNone } from "./wholeOrNone";

export type RowChange = RowAt & { readonly becomes: Row };

/** Changes the named columns of rows that still hold what was read; two syncs. */
export const changeRows =
  (name: string, changes: readonly RowChange[]): Work<void> =>
  async (context) => {
    const found = loadTable(context, name);
    await context.sync();
    const table = found();
    changes.forEach((change) => requireUnchanged(table, change));
    const cells = changes.map(({ index, becomes }) => ({ index, row: placed(table, becomes) }));

    await wholeOrNone(
      async () => {
        for (const { index, row } of cells)
          for (const { column, values } of runsOf(row))
            table.body.getCell(index, column).getResizedRange(0, values.length - 1).values = [
              values,
            ];
        await syncQuietly(context);
      },
      (again) => {
        const body = again.workbook.tables.getItem(name).getDataBodyRange();
        for (const { index, row } of cells)
          for (const column of row.keys())
            body.getCell(index, column).values = [
              [restoring(table.formulas[index]?.[column], table.rows[index]![column]!)],
            ];
      },
    );
  };
