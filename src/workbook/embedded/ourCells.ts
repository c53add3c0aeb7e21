import type { FormulaCell } from "../port";
import type { Engine } from "./engine";
import { NAMESPACE } from "./engineFunctions";
import type { Grid, Place } from "./grid";
import { oneCell, refOf } from "./ranges";

const OUR_FUNCTION = new RegExp(`\\b${NAMESPACE}\\.`, "i");

/** Every cell whose formula calls a function of ours, sheet by sheet. */
export function ourCells(
  { workbook }: Engine,
  grid: Grid,
): (FormulaCell & { readonly place: Place })[] {
  return workbook.getSheets().flatMap((sheet) => {
    const found: (FormulaCell & { place: Place })[] = [];
    sheet.getCellMatrix().forValue((row, column) => {
      const formula = grid.formula(sheet, row, column);
      if (formula === null || !OUR_FUNCTION.test(formula)) return;
      const range = oneCell(row, column);
      found.push({ ref: refOf(sheet.getName(), range), formula, place: { sheet, range } });
    });
    return found;
  });
}
