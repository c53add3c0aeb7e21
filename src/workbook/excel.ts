/** The port over Excel: few requests, plain values in and out, every change whole or not at all. */
import type { Blueprint, SheetPlan } from "./blueprint/types";
import {
  addRows,
  asData,
  changeRows,
  loadTable,
  removeRows,
  type RowChange,
} from "./excel/changeRows";
import { buildMissing } from "./excel/build";
import { restoring, toExcel, VALUES, valuesOf } from "./excel/cells";
import {
  inExcel,
  inOneStep,
  isMissing,
  onWaiting,
  syncQuietly,
  wholeOrNone,
  type Work,
} from "./excel/session";
import { atPlace, findOurs, orNull, rangeOf, repairOurs } from "./excel/formulas";
import { replaceSheet } from "./excel/replaceSheet";
import { healthOf } from "./excel/health";
import { ReadTogether } from "./excel/readTogether";
import { onVisible } from "./excel/visibility";
import { watch } from "./excel/watch";
import {
  PortError,
  type BuildReport,
  type CellValue,
  type FormulaCell,
  type Health,
  type Progress,
  type Row,
  type RowAt,
  type TableData,
  type Together,
  type WorkbookPort,
} from "./port";
import { sentences } from "./sentences";

type Named = { readonly items: readonly { readonly name: string }[]; load(what: string): unknown };

/** Names of the things in a collection of the workbook. */
const namesOf =
  (collection: (workbook: Excel.Workbook) => Named): Work<string[]> =>
  async (context) => {
    const found = collection(context.workbook);
    found.load("items/name");
    await context.sync();
    return found.items.map(({ name }) => name);
  };

/** Work on a table that must be there. */
async function onTable<Result>(doing: string, name: string, work: Work<Result>): Promise<Result> {
  try {
    return await inExcel(doing, work);
  } catch (error) {
    if (isMissing(error) && !(await new ExcelWorkbook().readTable(name)))
      throw new PortError("missing", sentences.noTable(name));
    throw error;
  }
}

export class ExcelWorkbook implements WorkbookPort {
  readonly kind = "excel";
  /** Excel's own Undo depends on its version and cannot take back charts or sheets. */
  readonly undoable = false;
  private readonly together = new ReadTogether((ref) => this.readRange(ref));

  sheetNames(): Promise<string[]> {
    return inExcel(
      "Reading the sheets",
      namesOf(({ worksheets }) => worksheets),
    );
  }

  tableNames(): Promise<string[]> {
    return inExcel(
      "Reading the tables",
      namesOf(({ tables }) => tables),
    );
  }

  readTable(name: string): Promise<TableData | null> {
    const read = inExcel(`Reading ${name}`, async (context) => {
      const found = loadTable(context, name);
      await context.sync();
      return asData(found());
    });
    return orNull(read);
  }

  readRange(ref: string): Promise<CellValue[][] | null> {
    const read = inExcel(`Reading ${ref}`, async (context) => {
      const range = rangeOf(context, ref).load(VALUES);
      await context.sync();
      return valuesOf(range);
    });
    return orNull(read);
  }

  /** One request, as long as the same tables and names are there as at the last reading. */
  readTogether(tables: readonly string[], ranges: readonly string[]): Promise<Together> {
    return this.together.read(tables, ranges);
  }

  async addRows(table: string, rows: readonly Row[]): Promise<number[]> {
    return rows.length === 0 ? [] : onTable("Adding rows", table, addRows(table, rows));
  }

  async changeRows(table: string, changes: readonly RowChange[]): Promise<void> {
    if (changes.length > 0) await onTable("Changing rows", table, changeRows(table, changes));
  }

  async removeRows(table: string, rows: readonly RowAt[]): Promise<void> {
    if (rows.length > 0) await onTable("Removing rows", table, removeRows(table, rows));
  }

  writeRange(ref: string, values: readonly (readonly CellValue[])[]): Promise<void> {
    return atPlace("Writing", ref, async (context) => {
      const range = rangeOf(context, ref).load(`${VALUES},formulas`);
      await context.sync();
      const before = valuesOf(range);
      const [rows, columns] = [before.length, before[0]!.length];
      if (values.length !== rows || values.some((row) => row.length !== columns))
        throw new PortError("invalid", sentences.wrongShape(ref, rows, columns));
      range.values = values.map((row) => row.map(toExcel));
      const was = before.map((row, down) =>
        row.map((value, right) => restoring(range.formulas[down]?.[right], value)),
      );
      await wholeOrNone(
        () => syncQuietly(context),
        (again) => void (rangeOf(again, ref).values = was),
      );
    });
  }

  build(blueprint: Blueprint): Promise<BuildReport> {
    return inExcel("Building the sheets", (context) => buildMissing(context, blueprint));
  }

  replaceSheet(plan: SheetPlan): Promise<void> {
    return inExcel(`Replacing ${plan.name}`, replaceSheet(plan));
  }

  ourFormulas(): Promise<FormulaCell[]> {
    return inExcel("Reading formulas", async (context) =>
      (await findOurs(context)).map(({ ref, formula }) => ({ ref, formula })),
    );
  }

  repairFormulas(progress?: Progress, stop?: AbortSignal): Promise<number> {
    return inOneStep("Repairing formulas", repairOurs("all", progress, stop));
  }

  /** Formulas that show #NAME? are written again first: no calculation cures them. */
  async recalculate(): Promise<void> {
    try {
      await inOneStep("Repairing formulas", repairOurs("unanswered"));
    } finally {
      await inExcel("Recalculating", async (context) => {
        context.application.calculate("Full");
        await context.sync();
      });
    }
  }

  health(blueprint: Blueprint): Promise<Health> {
    return inExcel("Looking at the workbook", (context) => healthOf(context, blueprint));
  }

  onChange(listener: () => void): () => void {
    return watch(listener);
  }

  onWaiting(listener: (waiting: boolean) => void): () => void {
    return onWaiting(listener);
  }

  onShown(listener: () => void): () => void {
    return onVisible((isVisible) => {
      if (isVisible) listener();
    });
  }

  show(ref: string): Promise<void> {
    return atPlace("Showing", ref, async (context) => {
      const range = rangeOf(context, ref);
      range.worksheet.activate();
      range.select();
      await context.sync();
    });
  }
}
