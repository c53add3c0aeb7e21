import type {
  Borders,
  Cell,
  Fill,
  Style as FileStyle,
  Workbook,
  Worksheet,
} from "@cj-tech-master/excelts";
import type {
  AddScatterChartSeriesOptions,
  ChartRichText,
  ChartTextProperties,
} from "@cj-tech-master/excelts/chart";
import {
  type Area,
  areaRef,
  columnLetters,
  fixedRef,
  quotedSheet,
  readSpot,
  type Spot,
} from "../a1";
import { blockArea, bodyRows } from "../blueprint/parts";
import type {
  CellsPlan,
  ChartPlan,
  FormulaPlan,
  ListRule,
  NumberFormat,
  SeriesPlan,
  SheetPlan,
  Style,
  TablePlan,
} from "../blueprint/types";
import { toFile } from "./cellValues";
import { storedFormula } from "./formulaText";

const DARK = "FF1C2326";
const GREY = "FF5B666B";
const ACCENT = "FF0B6E75";
const CAUTION = "FF8A3B12";
const LINE = "FFC9D1D4";

/** Colour of the bars in cells. */
export const BAR = "FFB9D6D8";
export const CHART_ACCENT = ACCENT.slice(2);
export const CHART_GREY = "8A969B";
export const CHART_LINE = LINE.slice(2);

type Look = Partial<FileStyle>;

const font = (size: number, colour: string, bold = false): Look => ({
  font: { name: "Arial", size, bold, color: { argb: colour } },
});
const fill = (argb: string): { fill: Fill } => ({
  fill: { type: "pattern", pattern: "solid", fgColor: { argb } },
});
const under: { border: Partial<Borders> } = {
  border: { bottom: { style: "thin", color: { argb: LINE } } },
};
const left: Look = { alignment: { horizontal: "left", vertical: "middle" } };
const middle: Look = { alignment: { vertical: "middle" } };

const LOOKS: Record<Style, Look> = {
  plain: { ...font(11, DARK), ...left },
  title: { ...font(20, DARK, true), ...left },
  lead: { ...font(12, GREY), ...middle },
  heading: { ...font(12, ACCENT, true), ...middle },
  label: { ...font(11, GREY), ...middle },
  input: { ...font(11, DARK), ...fill("FFE6F1F2"), ...under, ...left },
  answer: { ...font(14, DARK, true), ...left },
  figure: { ...font(11, DARK), ...left },
  hint: { ...font(9, GREY), ...middle },
  caution: { ...font(11, CAUTION, true), ...middle },
};

const HEADER: Look = { ...font(11, DARK, true), ...fill("FFDFE5E7"), ...under, ...left };

const made = new Map<string, Look>();
const once = (key: string, make: () => Look): Look => {
  const known = made.get(key) ?? make();
  made.set(key, known);
  return known;
};

/** How a role looks, with its number format; the same object for the same pair. */
export const lookOf = (style: Style = "plain", format?: NumberFormat): Look =>
  once(`${style}|${format ?? ""}`, () => ({
    ...LOOKS[style],
    ...(format === undefined || format === "General" ? {} : { numFmt: format }),
  }));

/** Header of a table or of a spill. */
export const headerLook = (): Look => HEADER;

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

const SMALL: ChartTextProperties = { size: 900 };

const words = (text: string, properties: ChartTextProperties): ChartRichText => ({
  paragraphs: [{ runs: [{ text, properties }] }],
});

function series(plan: SeriesPlan, index: number): AddScatterChartSeriesOptions {
  const colour = index === 0 ? CHART_ACCENT : CHART_GREY;
  const dots = plan.shape === "dots";
  return {
    name: plan.name.startsWith("=") ? { formula: plan.name.slice(1) } : plan.name,
    xValues: plan.x,
    values: plan.y,
    ...(dots
      ? {
          spPr: { noFill: true, line: { noFill: true } },
          marker: { symbol: "circle", size: 7, fill: colour, border: colour },
        }
      : { line: colour, lineWidth: 1.75, marker: { symbol: "none" }, smooth: false }),
    ...(plan.minus !== undefined && plan.plus !== undefined
      ? {
          errorBars: {
            direction: "x",
            barDir: "both",
            type: "cust",
            minus: plan.minus,
            plus: plan.plus,
            noEndCap: true,
            line: colour,
            lineWidth: 1.5,
          },
        }
      : {}),
    ...(plan.labelled
      ? {
          dataLabels: {
            showSerName: true,
            showLegendKey: false,
            showVal: false,
            position: "t",
            txPr: SMALL,
          },
        }
      : {}),
  };
}

/** Draws one chart of the blueprint as a chart of the spreadsheet's own. */
export function renderChart(sheet: Worksheet, plan: ChartPlan): void {
  const quiet = {
    majorGridlines: true,
    majorGridlinesStyle: { border: CHART_LINE, borderWidth: 0.5 },
    minorTickMark: "none",
    lineColor: CHART_LINE,
    txPr: SMALL,
  } as const;
  const labelled = plan.series.some((one) => one.labelled);
  const ordered = plan.yTitle === "";
  sheet.addScatterChart(
    {
      title: words(plan.title, { size: 1200, bold: true }),
      showLegend: plan.series.length > 1 && !labelled,
      legendPosition: "b",
      displayBlanksAs: "gap",
      varyColors: false,
      series: plan.series.map((one, index) => series(one, labelled ? 0 : index)),
      categoryAxis: { ...quiet, title: plan.xTitle, numFmt: "0" },
      valueAxis: {
        ...quiet,
        majorGridlines: !ordered,
        ...(ordered ? { tickLblPos: "none", majorTickMark: "none" } : { title: plan.yTitle }),
        ...(plan.yFormat === undefined ? {} : { numFmt: plan.yFormat }),
        ...(plan.yFormat?.endsWith("%") ? { min: 0, max: 1 } : {}),
      },
    },
    `${plan.from}:${plan.to}`,
  );
}

function setUpPrint(sheet: Worksheet, plan: NonNullable<SheetPlan["print"]>): void {
  Object.assign(sheet.pageSetup, {
    orientation: plan.landscape ? "landscape" : "portrait",
    fitToPage: plan.fitWide,
    fitToWidth: 1,
    fitToHeight: 0,
    ...(plan.titleRows === undefined ? {} : { printTitlesRow: `1:${plan.titleRows}` }),
    ...(plan.area === undefined ? {} : { printArea: plan.area }),
  });
}

/** Adds one sheet of the blueprint; what points to other sheets is for `linkSheet`, when all are there. */
function addSheet(book: Workbook, plan: SheetPlan): Worksheet {
  const sheet = book.addWorksheet(plan.name, {
    views: [
      {
        state: "frozen",
        ySplit: plan.frozenRows ?? 0,
        xSplit: plan.frozenColumns ?? 0,
        showGridLines: plan.blocks.some(({ kind }) => kind === "table"),
      },
    ],
  });
  plan.widths?.forEach((width, index) => (sheet.getColumn(index + 1).width = width));
  for (const block of plan.blocks) renderBlock(book, sheet, block);
  // What reading a file gives a sheet that says nothing else, so that saving it again changes nothing.
  Object.assign(sheet.pageSetup, { firstPageNumber: 1, copies: 1 });
  if (plan.print) setUpPrint(sheet, plan.print);
  return sheet;
}

/** Lists and charts, which may take their values from any sheet. */
function linkSheet(sheet: Worksheet, plan: SheetPlan): void {
  for (const block of plan.blocks) renderLists(sheet, block);
  for (const chart of plan.charts ?? []) renderChart(sheet, chart);
}

/** Adds sheets of the blueprint to a workbook. */
export function renderSheets(book: Workbook, plans: readonly SheetPlan[]): void {
  const sheets = plans.map((plan) => ({ plan, sheet: addSheet(book, plan) }));
  for (const { sheet, plan } of sheets) linkSheet(sheet, plan);
}
