import type { CellFormulaValue, Workbook, Worksheet } from "@cj-tech-master/excelts";
import { areaRef, quotedSheet, type Area } from "../a1";
import type { Blueprint } from "../blueprint/types";
import type { CellValue, WorkbookPort } from "../port";
import { isCellError, toError, toFile } from "./cellValues";
import { callsUs, storedFormula } from "./formulaText";
import { formulasIn, sheetsOf, type FormulaCellIn } from "./sheetsOf";

/** A workbook that a calculating program has opened and worked out. */
export interface Calculated {
  readonly port: Pick<WorkbookPort, "readRange">;
  close(): void | Promise<void>;
}

/** Rows and columns that one formula may fill. */
const DEEPEST_SPILL = 2_000;
const WIDEST_SPILL = 30;

const isBlankRow = (values: readonly CellValue[]): boolean => values.every((value) => value === "");

/** How far the values reach from a formula's cell: to the right in its row, then down. */
function reachOf(values: readonly (readonly CellValue[])[]): { rows: number; columns: number } {
  const first = values[0] ?? [];
  const end = first.findIndex((value, column) => column > 0 && value === "");
  const columns = end < 0 ? first.length : Math.max(end, 1);
  const bottom = values.findIndex((row, index) => index > 0 && isBlankRow(row.slice(0, columns)));
  return { rows: bottom < 0 ? values.length : bottom, columns };
}

/** The space to the right of a cell and below it that no other content takes. */
function freeSpace(sheet: Worksheet, { row, column, spill }: FormulaCellIn): Area {
  const own = (r: number, c: number): boolean => {
    if (spill && r <= spill.bottom && c <= spill.right) return false;
    const cell = sheet.findCell(r, c);
    return cell !== undefined && cell.value !== null && cell.value !== undefined;
  };
  let right = column;
  while (right - column + 1 < WIDEST_SPILL && !own(row, right + 1)) right++;
  let bottom = row;
  const isFree = (r: number): boolean => {
    for (let c = column; c <= right; c++) if (own(r, c)) return false;
    return true;
  };
  while (bottom - row + 1 < DEEPEST_SPILL && isFree(bottom + 1)) bottom++;
  return { top: row, left: column, bottom, right };
}

function writeSpill(
  sheet: Worksheet,
  { cell, row, column, formula, spill }: FormulaCellIn,
  values: readonly (readonly CellValue[])[],
): void {
  const { rows, columns } = reachOf(values);
  if (spill)
    for (let r = spill.top; r <= spill.bottom; r++)
      for (let c = spill.left; c <= spill.right; c++)
        if (r !== row || c !== column) sheet.getCell(r, c).value = null;
  for (let r = 0; r < rows; r++)
    for (let c = 0; c < columns; c++)
      if (r > 0 || c > 0) sheet.getCell(row + r, column + c).value = toFile(values[r]![c] ?? "");
  const area = { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 };
  cell.value = {
    formula: storedFormula(formula),
    shareType: "array",
    ref: areaRef(area),
    isDynamicArray: true,
    ...resultOf(values[0]?.[0] ?? ""),
  };
}

const resultOf = (value: CellValue): Pick<CellFormulaValue, "result"> => ({
  result: isCellError(value) ? toError(value) : value,
});

/** A program may lack a function of another one; then the value that the file holds is the better one. */
const isUnknown = (value: CellValue | undefined): boolean =>
  value !== undefined && isCellError(value) && value.error === "#NAME?";

/**
 * Works out every formula of a workbook with a program that calculates, and stores the values beside
 * the formulas, as a spreadsheet would on saving.
 */
export async function calculate(
  book: Workbook,
  open: (blueprint: Blueprint) => Promise<Calculated>,
): Promise<void> {
  const { port, close } = await open(sheetsOf(book));
  try {
    for (const sheet of book.worksheets)
      for (const one of formulasIn(sheet)) {
        const { cell, row, column, formula, spill } = one;
        const area = spill
          ? freeSpace(sheet, one)
          : { top: row, left: column, bottom: row, right: column };
        const values = await port.readRange(`${quotedSheet(sheet.name)}!${areaRef(area)}`);
        const first = values?.[0]?.[0];
        if (!values || first === undefined || (isUnknown(first) && !callsUs(formula))) continue;
        if (spill) writeSpill(sheet, one, values);
        else cell.value = { formula: storedFormula(formula), ...resultOf(first) };
      }
  } finally {
    await close();
  }
}
