/** New sheets, and blocks on sheets that are there, written into Excel. */
import { type Area, areaRef, columnLetters, fixedRef } from "../a1";
import { blockArea, bodyRows } from "../blueprint/parts";
import type {
  CellsPlan,
  FormulaPlan,
  ListRule,
  SheetPlan,
  Style,
  TablePlan,
} from "../blueprint/types";
import { sentences } from "../sentences";
import { BAR, dress, HEADER, LOOKS, toExcel, widthOf } from "./cells";
import { drawCharts } from "./charts";
import { inExcel, syncQuietly } from "./session";

// Blocks of the blueprint in Excel, in the order in which they may point to each other.

export type Block = SheetPlan["blocks"][number];
type Sheet = Excel.Worksheet;

/** Rows below a table that already have its lists and bars, for what will be typed there. */
const SPARE_ROWS = 500;

const cellsOf = (sheet: Sheet, area: Area): Excel.Range => sheet.getRange(areaRef(area));
const roleOf = (style: Style | undefined): (typeof LOOKS)[Style] => LOOKS[style ?? "plain"];

/** Values, tables and names. No formula yet: Excel refuses one that names a table still to come. */
export function renderContent(
  context: Excel.RequestContext,
  sheet: Sheet,
  sheetName: string,
  block: Block,
): void {
  const area = blockArea(block);
  if (block.kind === "table") renderTable(sheet, block, area);
  else if (block.kind === "cells") renderValues(sheet, block, area);
  if (block.kind !== "table" && block.name !== undefined)
    context.workbook.names.add(block.name, `=${fixedRef(sheetName, area)}`);
}

/** One call for a block whose rows are of one length, else one a row. */
function renderValues(sheet: Sheet, { values }: CellsPlan, area: Area): void {
  const width = area.right - area.left + 1;
  if (values.every((row) => row.length === width)) {
    cellsOf(sheet, area).values = values.map((row) => row.map(toExcel));
    return;
  }
  values.forEach((row, down) => {
    const at = { ...area, top: area.top + down, bottom: area.top + down };
    cellsOf(sheet, { ...at, right: area.left + row.length - 1 }).values = [row.map(toExcel)];
  });
}

function renderTable(sheet: Sheet, plan: TablePlan, area: Area): void {
  const blank = plan.columns.map(() => "");
  const typed = Array.from({ length: bodyRows(plan) }, (_, row) =>
    blank.map((none, column) =>
      plan.columns[column]?.formula === undefined
        ? toExcel(plan.rows[row]?.[column] ?? none)
        : none,
    ),
  );
  cellsOf(sheet, area).values = [plan.columns.map(({ header }) => header), ...typed];
  const table = sheet.tables.add(areaRef(area), true);
  table.set({ name: plan.name, style: "TableStyleLight1", showBandedRows: false });
}

export function renderFormulas(sheet: Sheet, block: Block): void {
  const area = blockArea(block);
  if (block.kind === "formula")
    cellsOf(sheet, { ...area, bottom: area.top, right: area.left }).formulas = [[block.formula]];
  if (block.kind === "table")
    block.columns.forEach(({ formula }, column) => {
      if (formula === undefined) return;
      const at = area.left + column;
      cellsOf(sheet, { ...area, top: area.top + 1, left: at, right: at }).formulas = Array.from(
        { length: bodyRows(block) },
        () => [formula],
      );
    });
}

/**
 * How the cells of a block look, and the lists and bars that they offer; on a sheet of ours also
 * below a table, for rows to come.
 */
export function renderLooks(sheet: Sheet, block: Block, isOurs: boolean): void {
  if (block.kind === "table") dressTable(sheet, block, isOurs ? SPARE_ROWS : 0);
  else if (block.kind === "cells") dressCells(sheet, block);
  else dressFormula(sheet, block);
}

function dressTable(sheet: Sheet, plan: TablePlan, spareRows: number): void {
  const area = blockArea(plan);
  dress(cellsOf(sheet, { ...area, bottom: area.top }), HEADER);
  plan.columns.forEach(({ style, format, list, bar }, column) => {
    const at = area.left + column;
    const body = { ...area, top: area.top + 1, left: at, right: at };
    const spare = cellsOf(sheet, { ...body, bottom: body.bottom + spareRows });
    dress(cellsOf(sheet, body), roleOf(style), format);
    if (list) offer(spare, list);
    if (bar) showBar(spare);
  });
}

function dressCells(sheet: Sheet, plan: CellsPlan): void {
  const area = blockArea(plan);
  if (plan.styles)
    plan.styles.forEach((style, column) => {
      const at = area.left + column;
      dress(cellsOf(sheet, { ...area, left: at, right: at }), roleOf(style), plan.format);
    });
  else dress(cellsOf(sheet, area), roleOf(plan.style), plan.format);
  if (plan.list) offer(cellsOf(sheet, area), plan.list);
}

function dressFormula(sheet: Sheet, { spill, style, format, ...plan }: FormulaPlan): void {
  const area = blockArea({ ...plan, ...(spill ? { spill } : {}) });
  dress(cellsOf(sheet, area), roleOf(style), format);
  spill?.formats?.forEach((of, column) => {
    const at = area.left + column;
    if (of !== "General")
      cellsOf(sheet, { ...area, left: at, right: at }).numberFormat = of as never;
  });
  for (const column of spill?.bars ?? []) {
    const at = area.left + column;
    showBar(cellsOf(sheet, { ...area, top: area.top + 1, left: at, right: at }));
  }
  if (spill && spill.rows > 1 && spill.header !== false)
    dress(cellsOf(sheet, { ...area, bottom: area.top }), HEADER);
}

/** A list may not name a table's column itself; in INDIRECT it may, and follows the table as it grows. */
function offer(range: Excel.Range, { values, column, strict }: ListRule): void {
  const source = values ? values.join(",") : `=INDIRECT("${column}")`;
  range.dataValidation.rule = { list: { inCellDropDown: true, source } };
  range.dataValidation.ignoreBlanks = true;
  range.dataValidation.errorAlert = {
    ...{ title: "Carrybook", message: "Choose one of the list.", style: "Stop" },
    showAlert: strict,
  };
}

/** A bar behind each share from 0 to 1. */
function showBar(range: Excel.Range): void {
  const { dataBar } = range.conditionalFormats.add("DataBar");
  dataBar.lowerBoundRule = { type: "Number", formula: "0" };
  dataBar.upperBoundRule = { type: "Number", formula: "1" };
  dataBar.positiveFormat.set({ fillColor: BAR, gradientFill: false });
}

// What belongs to a whole sheet of the blueprint in Excel: widths, frozen panes, lines, print.

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
