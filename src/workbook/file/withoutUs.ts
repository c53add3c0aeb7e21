import type { Workbook } from "@cj-tech-master/excelts";
import { fromFile, toFile } from "./cellValues";
import { callsUs } from "./formulaText";
import { formulasIn } from "./sheetsOf";

/**
 * Turns a workbook into one for programs that have neither the add-in nor spilling formulas: every
 * formula of ours, and every formula that fills more than its cell, becomes its last value. Plain
 * formulas stay. Needed because LibreOffice works such formulas out anew on opening, and then shows
 * an error where the last value stood.
 */
export function withoutUs(book: Workbook): void {
  for (const sheet of book.worksheets)
    for (const { cell, formula, spill } of formulasIn(sheet))
      if (spill || callsUs(formula)) cell.value = toFile(fromFile(cell.value));
}
