import type { Worksheet } from "@cj-tech-master/excelts";
import { areaRef, columnLetters, quotedSheet, type Area } from "../a1";
import type { ListRule } from "../blueprint/types";
import { BAR } from "./looks";

/** Rows below a table that already have its lists and bars, for what will be typed there. */
export const SPARE_ROWS = 500;

/**
 * Cells of a table's column as a formula that follows the table as it grows. Table references
 * are not allowed in lists, and a fixed range would miss the rows typed later.
 */
function growingColumn(sheet: Worksheet, column: string): string | null {
  const [, tableName, header] = /^(.+)\[(.+)\]$/.exec(column) ?? [];
  for (const other of sheet.workbook.worksheets) {
    const table = other.getTables().find(({ name }) => name === tableName);
    const index = table?.model.columns.findIndex(({ name }) => name === header) ?? -1;
    const corner = table?.model.tl;
    if (index < 0 || !corner) continue;
    const letters = columnLetters(corner.col + index);
    const cell = (row: number): string => `$${letters}$${row}`;
    const from = `${quotedSheet(other.name)}!${cell(corner.row)}`;
    const span = `${quotedSheet(other.name)}!${cell(corner.row + 1)}:${cell(corner.row + SPARE_ROWS)}`;
    return `OFFSET(${from},1,0,MAX(1,COUNTA(${span})),1)`;
  }
  return null;
}

/** Offers the values of a list in every cell of an area. */
export function listIn(sheet: Worksheet, area: Area, list: ListRule): void {
  const source = list.values
    ? `"${list.values.join(",")}"`
    : growingColumn(sheet, list.column ?? "");
  if (source === null) return;
  sheet.dataValidations.add(`range:${areaRef(area)}`, {
    type: "list",
    allowBlank: true,
    formulae: [source],
    showErrorMessage: list.strict,
    errorStyle: "stop",
    error: "Choose one of the list.",
  });
}

/** A bar behind each share from 0 to 1. */
export function barIn(sheet: Worksheet, area: Area): void {
  sheet.addConditionalFormatting({
    ref: areaRef(area),
    rules: [
      {
        type: "dataBar",
        cfvo: [
          { type: "num", value: 0 },
          { type: "num", value: 1 },
        ],
        color: { argb: BAR },
      },
    ],
  });
}
