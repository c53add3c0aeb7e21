import { areaRef } from "../a1";
import { blockArea } from "../blueprint/blockArea";
import type { Names } from "./namesIn";
import type { Part } from "./render";

/** Takes away what a failed attempt made: its sheets, and its blocks on sheets that were there. */
export async function removeMade(
  context: Excel.RequestContext,
  parts: readonly Part[],
  before: Names,
): Promise<void> {
  const { worksheets, tables, names } = context.workbook;
  for (const collection of [worksheets, tables, names]) collection.load("items/name");
  await context.sync();
  for (const name of names.items) if (!before.names.has(name.name.toLowerCase())) name.delete();
  for (const table of tables.items)
    if (!before.tables.has(table.name.toLowerCase())) table.delete();
  for (const { plan, isNew, blocks } of parts) {
    const sheet = worksheets.items.find(
      ({ name }) => name.toLowerCase() === plan.name.toLowerCase(),
    );
    if (!sheet) continue;
    if (isNew) sheet.delete();
    else for (const block of blocks) wipe(sheet.getRange(areaRef(blockArea(block))));
  }
}

function wipe(range: Excel.Range): void {
  range.clear();
  range.dataValidation.clear();
  range.conditionalFormats.clearAll();
}
