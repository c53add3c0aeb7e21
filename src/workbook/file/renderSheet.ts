import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import type { SheetPlan } from "../blueprint/types";
import { renderBlock, renderLists } from "./renderBlocks";
import { renderChart } from "./renderChart";

function setUpPrint(sheet: Worksheet, plan: NonNullable<SheetPlan["print"]>): void {
  Object.assign(sheet.pageSetup, {
    orientation: plan.landscape ? "landscape" : "portrait",
    fitToPage: plan.fitWide,
    fitToWidth: 1,
    fitToHeight: 0,
    ...(plan.titleRows === undefined ? {} : { printTitlesRow: `1:${plan.titleRows}` }),
    ...(plan.area === undefined ? {} : { printArea: plan.area }),
  });
}

/** Adds one sheet of the blueprint; what points to other sheets is for `linkSheet`, when all are there. */
function addSheet(book: Workbook, plan: SheetPlan): Worksheet {
  const sheet = book.addWorksheet(plan.name, {
    views: [
      {
        state: "frozen",
        ySplit: plan.frozenRows ?? 0,
        xSplit: plan.frozenColumns ?? 0,
        showGridLines: plan.blocks.some(({ kind }) => kind === "table"),
      },
    ],
  });
  plan.widths?.forEach((width, index) => (sheet.getColumn(index + 1).width = width));
  for (const block of plan.blocks) renderBlock(book, sheet, block);
  // What reading a file gives a sheet that says nothing else, so that saving it again changes nothing.
  Object.assign(sheet.pageSetup, { firstPageNumber: 1, copies: 1 });
  if (plan.print) setUpPrint(sheet, plan.print);
  return sheet;
}

/** Lists and charts, which may take their values from any sheet. */
function linkSheet(sheet: Worksheet, plan: SheetPlan): void {
  for (const block of plan.blocks) renderLists(sheet, block);
  for (const chart of plan.charts ?? []) renderChart(sheet, chart);
}

/** Adds sheets of the blueprint to a workbook. */
export function renderSheets(book: Workbook, plans: readonly SheetPlan[]): void {
  const sheets = plans.map((plan) => ({ plan, sheet: addSheet(book, plan) }));
  for (const { sheet, plan } of sheets) linkSheet(sheet, plan);
}
