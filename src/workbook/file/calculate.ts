import type { Cell, CellFormulaValue, Workbook, Worksheet } from "@cj-tech-master/excelts";
import { type Area, areaRef, cellRef, quotedSheet, readArea, readSheetArea } from "../a1";
import type { Blueprint, CellsPlan, FormulaPlan, SheetPlan, TablePlan } from "../blueprint/types";
import type { CellValue, WorkbookPort } from "../port";
import { fromFile, isCellError, toError, toFile } from "./cellValues";
import { callsUs, storedFormula, typedFormula } from "./formulaText";
import { FileTable } from "./fileTable";

type Block = SheetPlan["blocks"][number];

const inside = ({ top, left, bottom, right }: Area, row: number, column: number): boolean =>
  row >= top && row <= bottom && column >= left && column <= right;

const at = ({ top, left }: Area): string => cellRef({ row: top, column: left });

/** The cells that a formula filled when it was last worked out; null for a formula of one cell. */
export function spillOf(cell: Cell): Area | null {
  const { value } = cell;
  const spills =
    typeof value === "object" &&
    value !== null &&
    "shareType" in value &&
    value.shareType === "array";
  return spills ? readArea(value.ref) : null;
}

export interface FormulaCellIn {
  readonly cell: Cell;
  readonly row: number;
  readonly column: number;
  readonly formula: string;
  readonly spill: Area | null;
}

/** Every cell with a formula, in reading order. */
export function formulasIn(sheet: Worksheet): FormulaCellIn[] {
  const found: FormulaCellIn[] = [];
  sheet.eachRow((cells, row) =>
    cells.eachCell((cell, column) => {
      if (cell.formula !== undefined)
        found.push({
          cell,
          row,
          column,
          formula: typedFormula(cell.formula),
          spill: spillOf(cell),
        });
    }),
  );
  return found;
}

function tablePlan(table: FileTable): TablePlan {
  const { name, headers, rows } = table.read();
  return {
    kind: "table",
    name,
    at: at(table.area),
    columns: headers.map((header) => ({ header, width: 12 })),
    rows,
  };
}

/** Typed values of a sheet, cell by cell: what stands in no table and was not filled by a formula. */
function typedCells(sheet: Worksheet, taken: readonly Area[]): CellsPlan[] {
  const blocks: CellsPlan[] = [];
  sheet.eachRow((cells, row) =>
    cells.eachCell((cell, column) => {
      if (cell.formula !== undefined || taken.some((area) => inside(area, row, column))) return;
      const value = fromFile(cell.value);
      if (value !== "")
        blocks.push({ kind: "cells", at: cellRef({ row, column }), values: [[value]] });
    }),
  );
  return blocks;
}

/** A defined name as a block of blanks, on which the cells are laid afterwards. */
function namePlans(book: Workbook, sheet: Worksheet): CellsPlan[] {
  return book.definedNames.getAllEntries().flatMap(({ name, ranges }) => {
    const found = readSheetArea(ranges[0] ?? "");
    if (!found || found.sheet !== sheet.name) return [];
    const { top, left, bottom, right } = found.area;
    const row = Array.from({ length: right - left + 1 }, () => "");
    const values = Array.from({ length: bottom - top + 1 }, () => row);
    return [{ kind: "cells", at: at(found.area), values, name }];
  });
}

/**
 * What a workbook holds, as sheets for a program that calculates: values, formulas, tables and
 * names, no looks. Cells that a formula filled are left free for it.
 */
export function sheetsOf(book: Workbook): Blueprint {
  return {
    sheets: book.worksheets.map((sheet) => {
      const tables = sheet.getTables().map(({ name }) => FileTable.get(book, name));
      const formulas = formulasIn(sheet);
      const taken = [
        ...tables.map(({ area }) => area),
        ...formulas.flatMap(({ spill }) => spill ?? []),
      ];
      const blocks: Block[] = [
        ...namePlans(book, sheet),
        ...tables.map(tablePlan),
        ...typedCells(sheet, taken),
        ...formulas.map(({ row, column, formula }): FormulaPlan => ({
          kind: "formula",
          at: cellRef({ row, column }),
          formula,
        })),
      ];
      return { name: sheet.name, blocks };
    }),
  };
}

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
