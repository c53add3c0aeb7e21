/** The invented rows of the starter workbook, for tables that are still empty. */
import { starterBlueprint } from "../../workbook/blueprint";
import type { TablePlan } from "../../workbook/blueprint/types";
import type { Row, TableData } from "../../workbook/port";

const plans = (): readonly TablePlan[] =>
  starterBlueprint().sheets.flatMap(({ blocks }) =>
    blocks.filter((block): block is TablePlan => block.kind === "table"),
  );

/** Table by table the rows that would fill it; tables with anything in them are left out. */
export function starterRows(
  tables: readonly (TableData | null)[],
): readonly { readonly table: string; readonly rows: readonly Row[] }[] {
  return plans().flatMap((plan) => {
    const table = tables.find((known) => known?.name.toLowerCase() === plan.name.toLowerCase());
    return table && isEmpty(table) ? [{ table: plan.name, rows: rowsOf(plan) }] : [];
  });
}

export const isEmpty = (table: TableData): boolean =>
  table.rows.every((row) => row.every((cell) => cell === ""));

/** Columns with a formula fill themselves. */
const rowsOf = ({ columns, rows }: TablePlan): Row[] =>
  rows.map((row) =>
    Object.fromEntries(
      columns
        .map(({ header, formula }, at) => [header, formula ? "" : (row[at] ?? "")] as const)
        .filter(([, cell]) => cell !== ""),
    ),
  );
