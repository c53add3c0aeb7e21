/** What belongs to a whole sheet of the blueprint in Excel: widths, frozen panes, lines, print. */
import { areaRef, columnLetters } from "../a1";
import { blockArea } from "../blueprint/blockArea";
import type { SheetPlan } from "../blueprint/types";
import { widthOf } from "./looks";

export function renderSheet(sheet: Excel.Worksheet, plan: SheetPlan): void {
  widths(plan).forEach((characters, index) => {
    const letters = columnLetters(index + 1);
    sheet.getRange(`${letters}:${letters}`).format.columnWidth = widthOf(characters);
  });
  sheet.showGridlines = plan.blocks.some(({ kind }) => kind === "table");
  const frozen = { rows: plan.frozenRows ?? 0, columns: plan.frozenColumns ?? 0 };
  if (frozen.rows > 0 && frozen.columns > 0)
    sheet.freezePanes.freezeAt(
      sheet.getRange(areaRef({ top: 1, left: 1, bottom: frozen.rows, right: frozen.columns })),
    );
  else if (frozen.rows > 0) sheet.freezePanes.freezeRows(frozen.rows);
  else if (frozen.columns > 0) sheet.freezePanes.freezeColumns(frozen.columns);
}

function widths(plan: SheetPlan): number[] {
  const all = [...(plan.widths ?? [])];
  for (const block of plan.blocks)
    if (block.kind === "table") {
      const { left } = blockArea(block);
      block.columns.forEach(({ width }, column) => (all[left - 1 + column] = width));
    }
  return all;
}

export function setUpPrint(sheet: Excel.Worksheet, plan: NonNullable<SheetPlan["print"]>): void {
  const { pageLayout } = sheet;
  pageLayout.orientation = plan.landscape ? "Landscape" : "Portrait";
  if (plan.fitWide) pageLayout.zoom = { horizontalFitToPages: 1 };
  if (plan.area !== undefined) pageLayout.setPrintArea(plan.area);
  if (plan.titleRows !== undefined) pageLayout.setPrintTitleRows(`$1:$${plan.titleRows}`);
}
