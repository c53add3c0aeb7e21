/** How the workbook is: whether Excel knows our functions, and what keeps sheets and pane apart. */
import type { Blueprint, TablePlan } from "../blueprint/types";
import { callsUs } from "../file/formulaText";
import type { Health } from "../port";
import { sentences } from "../sentences";

/** Reads names and settings with one request, and a few cells with a second. */
export async function healthOf(
  context: Excel.RequestContext,
  blueprint: Blueprint,
): Promise<Health> {
  const { workbook, application } = context;
  const { worksheets, tables } = workbook;
  application.load("calculationMode");
  workbook.load("readOnly");
  worksheets.load("items/name");
  tables.load("items/name");
  await context.sync();
  const sheets = new Set(worksheets.items.map(({ name }) => name.toLowerCase()));
  const asked = cellsOf(blueprint)
    .filter(({ sheet }) => sheets.has(sheet.toLowerCase()))
    .map(({ sheet, at }) =>
      worksheets.getItem(sheet).getRange(at).load("formulas,values,valueTypes"),
    );
  const strangers = strangersIn(blueprint, tables.items).map((table) => ({
    table,
    header: table.getHeaderRowRange().load("values"),
  }));
  if (asked.length + strangers.length > 0) await context.sync();
  const remarks = [
    ...(workbook.readOnly ? [sentences.isReadOnly] : []),
    ...(application.calculationMode === "Manual" ? [sentences.manualCalculation] : []),
    ...renamed(blueprint, tables.items, strangers),
  ];
  return { unanswered: asked.some(isUnanswered), remarks };
}

/** Cells of the blueprint that ask us; where the player moved one, its old place is passed over. */
const cellsOf = ({ sheets }: Blueprint): { readonly sheet: string; readonly at: string }[] =>
  sheets.flatMap(({ name, blocks }) =>
    blocks.flatMap((block) =>
      block.kind === "formula" && callsUs(block.formula) ? [{ sheet: name, at: block.at }] : [],
    ),
  );

const isUnanswered = ({ formulas, values, valueTypes }: Excel.Range): boolean =>
  valueTypes[0]?.[0] === "Error" &&
  values[0]?.[0] === "#NAME?" &&
  callsUs(String(formulas[0]?.[0]));

const same = (a: string, b: string): boolean => a.trim().toLowerCase() === b.trim().toLowerCase();

const plansOf = ({ sheets }: Blueprint): TablePlan[] =>
  sheets.flatMap(({ blocks }) => blocks.filter((block) => block.kind === "table"));

/** Tables that are none of ours, where one of ours is missing. */
function strangersIn(blueprint: Blueprint, tables: readonly Excel.Table[]): Excel.Table[] {
  const ours = plansOf(blueprint).map(({ name }) => name);
  const isMissing = ours.some((name) => !tables.some((table) => same(table.name, name)));
  return isMissing ? tables.filter(({ name }) => !ours.some((our) => same(our, name))) : [];
}

/** A stranger with all columns of a missing table is that table under another name. */
const renamed = (
  blueprint: Blueprint,
  tables: readonly Excel.Table[],
  strangers: readonly { readonly table: Excel.Table; readonly header: Excel.Range }[],
): string[] =>
  plansOf(blueprint)
    .filter(({ name }) => !tables.some((table) => same(table.name, name)))
    .flatMap(({ name, columns }) => {
      const twin = strangers.find(({ header }) =>
        columns.every((column) =>
          (header.values[0] as unknown[]).some((cell) => same(String(cell), column.header)),
        ),
      );
      return twin ? [sentences.renamedTable(name, twin.table.name)] : [];
    });
