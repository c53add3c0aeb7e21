/** A table as it stands in Excel, with what its change needs. */
import type { CellValue, TableData } from "../port";
import { isFormula, VALUES, valuesOf } from "./cells";

export interface FoundTable extends TableData {
  readonly table: Excel.Table;
  readonly body: Excel.Range;
  readonly range: Excel.Range;
  readonly formulas: readonly (readonly unknown[])[];
  /** Whether a column is worked out by formulas. */
  readonly computed: readonly boolean[];
}

/** Queues the loading of a table; call the answer after the sync. */
export function loadTable(context: Excel.RequestContext, name: string): () => FoundTable {
  const table = context.workbook.tables.getItem(name);
  const header = table.getHeaderRowRange();
  const body = table.getDataBodyRange();
  const range = table.getRange();
  table.load("name");
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
