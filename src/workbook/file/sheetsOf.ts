import type { Cell, Workbook, Worksheet } from "@cj-tech-master/excelts";
import { cellRef, readArea, readSheetArea, type Area } from "../a1";
import type { Blueprint, CellsPlan, FormulaPlan, SheetPlan, TablePlan } from "../blueprint/types";
import { fromFile } from "./cellValues";
import { FileTable } from "./fileTable";
import { typedFormula } from "./formulaText";

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
