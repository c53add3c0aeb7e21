/** The invented rows of the starter workbook, for tables that are still empty. */
import { DATA_PARTS, DATA_TABLES, type DataPart } from "../../workbook/blueprint/dataTables";
import { starterBlueprint } from "../../workbook/blueprint/index";
import type { TablePlan } from "../../workbook/blueprint/types";
import type { Row, TableData } from "../../workbook/port";
import { type Book, SETTINGS } from "../book/book";

// What the workbook has of what the product needs.

export interface Part {
  readonly name: string;
  readonly what: string;
  readonly there: boolean;
}

const WHAT: Readonly<Record<DataPart, string>> = {
  throws: "your throws, on Log",
  bag: "your discs, on Discs",
  course: "the holes, on Holes",
  results: "what happened there, on Rounds",
  putts: "putts made and tried, on Rounds",
};

export const partsOf = ({ raw }: Book): readonly Part[] => [
  ...DATA_PARTS.map((part) => ({
    name: DATA_TABLES[part],
    what: WHAT[part],
    there: raw[part] !== null,
  })),
  { name: SETTINGS, what: "units, wind, circle, putting, on Start", there: raw.settings !== null },
];

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
