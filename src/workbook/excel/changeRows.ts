/** What a change of rows needs to know of a table: which column, which row, is it as it was. */
import { type CellValue, PortError, type Row, type RowAt, type TableData } from "../port";
import { sentences } from "../sentences";
import { isFormula, restoring, sameValue, toExcel, VALUES, valuesOf } from "./cells";
import { syncQuietly, wholeOrNone, type Work } from "./session";

// A table as it stands in Excel, with what its change needs.

export interface FoundTable extends TableData {
  readonly table: Excel.Table;
  readonly body: Excel.Range;
  readonly range: Excel.Range;
  readonly formulas: readonly (readonly unknown[])[];
  /** Whether a column is worked out by formulas. */
  readonly computed: readonly boolean[];
  readonly isFiltered: boolean;
  readonly hasTotals: boolean;
}

/** Queues the loading of a table; call the answer after the sync. */
export function loadTable(context: Excel.RequestContext, name: string): () => FoundTable {
  const table = context.workbook.tables.getItem(name);
  const header = table.getHeaderRowRange();
  const body = table.getDataBodyRange();
  const range = table.getRange();
  table.load("name,showTotals");
  table.autoFilter.load("isDataFiltered");
  table.worksheet.load("name");
  header.load("values");
  body.load(`${VALUES},formulas`);
  return () => {
    const rows = valuesOf(body);
    const formulas = body.formulas as unknown[][];
    const last = rows.length - 1;
    return {
      ...{ table, body, range, rows, formulas },
      name: table.name,
      sheet: table.worksheet.name,
      isFiltered: table.autoFilter.isDataFiltered,
      hasTotals: table.showTotals,
      headers: (header.values[0] as unknown[]).map(String),
      computed: rows[last]!.map((value: CellValue, column) =>
        isFormula(formulas[last]?.[column], value),
      ),
    };
  };
}

export const asData = ({ name, sheet, headers, rows }: FoundTable): TableData => ({
  ...{ name, sheet, headers, rows },
});

export function columnAt({ name, headers }: FoundTable, header: string): number {
  const wanted = header.trim().toLowerCase();
  const at = headers.findIndex((known) => known.trim().toLowerCase() === wanted);
  if (at < 0) throw new PortError("missing", sentences.noColumn(name, header));
  return at;
}

/** Values of a row by column, as Excel takes them. Throws where a header is unknown or computed. */
export function placed(
  table: FoundTable,
  row: Row,
): ReadonlyMap<number, string | number | boolean> {
  return new Map(
    Object.entries(row).map(([header, value]) => {
      const column = columnAt(table, header);
      if (table.computed[column])
        throw new PortError("invalid", sentences.formulaColumn(table.name, header));
      return [column, toExcel(value)];
    }),
  );
}

/** Throws unless the row still holds what its reader saw. */
export function requireUnchanged(table: FoundTable, { index, was }: RowAt): void {
  const row = table.rows[index];
  const same =
    row !== undefined &&
    Object.entries(was).every(([header, value]) =>
      sameValue(row[columnAt(table, header)] ?? "", value),
    );
  if (!same) throw new PortError("changed", sentences.rowChanged(table.name, index + 1));
}

/** Rows of the body up to the last one in which something was typed. */
export function filledRows({ rows, computed }: FoundTable): number {
  const isFilled = (row: FoundTable["rows"][number]): boolean =>
    row.some((value, column) => value !== "" && !computed[column]);
  let count = rows.length;
  while (count > 0 && !isFilled(rows[count - 1]!)) count -= 1;
  return count;
}

/** Runs of columns that stand side by side, so that a row is written with few calls. */
export function runsOf<Value>(
  cells: ReadonlyMap<number, Value>,
): { column: number; values: Value[] }[] {
  const runs: { column: number; values: Value[] }[] = [];
  for (const [column, value] of [...cells].sort(([a], [b]) => a - b)) {
    const last = runs.at(-1);
    if (last && last.column + last.values.length === column) last.values.push(value);
    else runs.push({ column, values: [value] });
  }
  return runs;
}

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
    requireUnfiltered(table);
    if (longer > 0 && table.hasTotals)
      throw new PortError("invalid", sentences.totalRow(table.name));
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

/** Under a filter Excel deletes nothing, or another row, and new rows vanish from view. */
function requireUnfiltered({ name, isFiltered }: FoundTable): void {
  if (isFiltered) throw new PortError("invalid", sentences.filtered(name));
}

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
    requireUnfiltered(table);
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
