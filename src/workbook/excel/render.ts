/** New sheets, and blocks on sheets that are there, written into Excel. */
import type { SheetPlan } from "../blueprint/types";
import { sentences } from "../sentences";
import { drawCharts } from "./drawCharts";
import { renderContent, renderFormulas, renderLooks, type Block } from "./renderBlocks";
import { renderSheet, setUpPrint } from "./renderSheet";
import { inExcel, syncQuietly } from "./session";

/** A sheet of the blueprint and those of its blocks that are to be made. */
export interface Part {
  readonly plan: SheetPlan;
  readonly isNew: boolean;
  readonly blocks: readonly Block[];
}

/** All sheets first, then what formulas may name, then the formulas: Excel refuses them otherwise. */
export async function render(
  context: Excel.RequestContext,
  parts: readonly Part[],
  afterwards: () => void = () => {},
): Promise<void> {
  const { worksheets } = context.workbook;
  const rendered = parts.map((part) => ({
    ...part,
    sheet: part.isNew ? worksheets.add(part.plan.name) : worksheets.getItem(part.plan.name),
  }));
  for (const { sheet, plan, blocks } of rendered)
    for (const block of blocks) renderContent(context, sheet, plan.name, block);
  for (const { sheet, plan, blocks, isNew } of rendered) {
    if (isNew) renderSheet(sheet, plan);
    for (const block of blocks) renderLooks(sheet, block, isNew);
  }
  for (const { sheet, blocks } of rendered)
    for (const block of blocks) renderFormulas(sheet, block);
  afterwards();
  await syncQuietly(context);
}

/**
 * Print set-up and charts, each in a request of its own: a machine without a printer refuses the
 * first, and a sheet without them is still whole. Answers what could not be had.
 */
export async function dressUp(plans: readonly SheetPlan[]): Promise<string[]> {
  const lacking: string[] = [];
  try {
    await inExcel("Setting up the print", async (context) => {
      for (const { name, print } of plans)
        if (print) setUpPrint(context.workbook.worksheets.getItem(name), print);
      await context.sync();
    });
  } catch {
    lacking.push(sentences.noPrint);
  }
  return [...lacking, ...(await drawCharts(plans))];
}
