import type { Cell, Workbook, Worksheet } from "@cj-tech-master/excelts";
import { areaRef, fixedRef, readSpot, type Area, type Spot } from "../a1";
import { blockArea, bodyRows } from "../blueprint/blockArea";
import type { CellsPlan, FormulaPlan, SheetPlan, Style, TablePlan } from "../blueprint/types";
import { toFile } from "./cellValues";
import { storedFormula } from "./formulaText";
import { barIn, listIn, SPARE_ROWS } from "./lists";
import { headerLook, lookOf } from "./looks";

type Block = SheetPlan["blocks"][number];

const spot = (at: string): Spot => {
  const found = readSpot(at);
  if (!found) throw new RangeError(`The blueprint names no cell: ${at}`);
  return found;
};

/** Puts a formula into a cell, its value still to come; `spill` is the area it fills. */
export function writeFormula(cell: Cell, formula: string, spill?: Area): void {
  const stored = storedFormula(formula);
  cell.value = spill
    ? { formula: stored, shareType: "array", ref: areaRef(spill), isDynamicArray: true }
    : { formula: stored };
}

function renderTable(sheet: Worksheet, plan: TablePlan): void {
  const { top, left, bottom } = blockArea(plan);
  const rows = Array.from({ length: bodyRows(plan) }, (_, index) =>
    plan.columns.map(({ formula }, column) =>
      formula === undefined
        ? toFile(plan.rows[index]?.[column] ?? "")
        : { formula: storedFormula(formula) },
    ),
  );
  sheet.addTable({
    name: plan.name,
    ref: plan.at,
    style: { theme: "TableStyleLight1", showRowStripes: false },
    columns: plan.columns.map(({ header, formula }) => ({
      name: header,
      filterButton: true,
      ...(formula === undefined ? {} : { calculatedColumnFormula: storedFormula(formula) }),
    })),
    rows,
  });
  plan.columns.forEach((column, index) => {
    const at = left + index;
    sheet.getCell(top, at).style = headerLook();
    const look = lookOf(column.style, column.format);
    for (let row = top + 1; row <= bottom; row++) sheet.getCell(row, at).style = look;
    sheet.getColumn(at).width = column.width;
    if (column.bar)
      barIn(sheet, { top: top + 1, left: at, bottom: bottom + SPARE_ROWS, right: at });
  });
}

/** Heights in points of rows that need air; the others fit their text. */
const HEIGHTS: Partial<Record<Style, number>> = { title: 32, lead: 20 };

function giveHeight(sheet: Worksheet, row: number, style?: Style): void {
  const height = style && HEIGHTS[style];
  if (height !== undefined) sheet.getRow(row).height = height;
}

function renderCells(sheet: Worksheet, plan: CellsPlan): void {
  const { row: top, column: left } = spot(plan.at);
  giveHeight(sheet, top, plan.style);
  plan.values.forEach((row, down) =>
    row.forEach((value, right) => {
      const cell = sheet.getCell(top + down, left + right);
      cell.value = toFile(value);
      cell.style = lookOf(plan.styles?.[right] ?? plan.style, plan.format);
    }),
  );
}

function renderFormula(sheet: Worksheet, plan: FormulaPlan): void {
  const { top, left, bottom, right } = blockArea(plan);
  giveHeight(sheet, top, plan.style);
  const header = plan.spill !== undefined && plan.spill.rows > 1 && plan.spill.header !== false;
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++)
      sheet.getCell(row, column).style =
        header && row === top
          ? headerLook()
          : lookOf(plan.style, plan.spill?.formats?.[column - left] ?? plan.format);
  writeFormula(
    sheet.getCell(top, left),
    plan.formula,
    plan.spill && { top, left, bottom: top, right: left },
  );
  for (const bar of plan.spill?.bars ?? [])
    barIn(sheet, { top: top + 1, left: left + bar, bottom, right: left + bar });
}

/** Renders one block, and gives its name, if it has one, to its cells. */
export function renderBlock(book: Workbook, sheet: Worksheet, block: Block): void {
  if (block.kind === "table") renderTable(sheet, block);
  else if (block.kind === "cells") renderCells(sheet, block);
  else renderFormula(sheet, block);
  if (block.kind !== "table" && block.name !== undefined)
    book.definedNames.add(fixedRef(sheet.name, blockArea(block)), block.name);
}

/** Offers the lists of a block; done when every sheet is there, as a list may stand on another one. */
export function renderLists(sheet: Worksheet, block: Block): void {
  const cells = blockArea(block);
  if (block.kind === "cells" && block.list) listIn(sheet, cells, block.list);
  if (block.kind !== "table") return;
  block.columns.forEach(({ list }, index) => {
    const at = cells.left + index;
    if (list)
      listIn(
        sheet,
        { top: cells.top + 1, left: at, bottom: cells.bottom + SPARE_ROWS, right: at },
        list,
      );
  });
}
