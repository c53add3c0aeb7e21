/** What a change of rows needs to know of a table: which column, which row, is it as it was. */
import { PortError, type Row, type RowAt } from "../port";
import { sentences } from "../sentences";
import { sameValue, toExcel } from "./cells";
import type { FoundTable } from "./readTable";

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
