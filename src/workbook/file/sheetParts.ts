/** Sheets and tables of a workbook as parts of a file (ECMA-376 part 1, 18.3 and 18.5). */
import { type Area, areaRef, cellRef, columnLetters, quotedSheet, readSheetArea } from "../a1";
import { storedError } from "../package/writeValues";
import type { CellValue } from "../port";
import type {
  WholeBook,
  WholeCell,
  WholeLine,
  WholeRule,
  WholeSheet,
  WholeTable,
} from "../wholeBook";
import { callsUs, functionsIn, storedFormula } from "./formulaText";
import type { StylesWriter } from "./styleParts";
import { element, HEAD, keepsBlanks, MAIN, OFFICE, storedText } from "./xmlText";

/** Gives each different text of a workbook its place among the strings that its sheets share. */
export class SharedStrings {
  private readonly places = new Map<string, number>();
  private uses = 0;

  of(text: string): number {
    this.uses += 1;
    const known = this.places.get(text);
    if (known !== undefined) return known;
    this.places.set(text, this.places.size);
    return this.places.size - 1;
  }

  toXml(): string {
    const items: string[] = [];
    for (const text of this.places.keys())
      items.push(`<si>${element("t", keepsBlanks(text), storedText(text)) /* "" is <t/> */}</si>`);
    const counts = { count: this.uses, uniqueCount: this.places.size };
    return HEAD + element("sst", { xmlns: MAIN, ...counts }, items.join(""));
  }
}

/** Functions that answer with an array where they may, so that a spreadsheet marks a single cell of them with @. */
const ARRAY_FUNCTIONS = new Set(
  (
    "ANCHORARRAY BYCOL BYROW CHOOSECOLS CHOOSEROWS DROP EXPAND FILTER FREQUENCY GROUPBY HSTACK INDEX " +
    "LAMBDA LET LINEST LOGEST MAKEARRAY MAP MINVERSE MMULT MODE.MULT MUNIT OFFSET PIVOTBY RANDARRAY " +
    "REDUCE SCAN SEQUENCE SORT SORTBY TAKE TEXTSPLIT TOCOL TOROW TRANSPOSE TREND TRIMRANGE UNIQUE " +
    "VSTACK WRAPCOLS WRAPROWS XLOOKUP"
  ).split(" "),
);
/** These too, but they may as well stand in a cell of a table, where no array may. */
const mayFillMore = (formula: string): boolean =>
  callsUs(formula) || functionsIn(formula.slice(1)).some((name) => ARRAY_FUNCTIONS.has(name));

const within = ({ top, left, bottom, right }: Area, row: number, column: number): boolean =>
  row >= top && row <= bottom && column >= left && column <= right;

/** What goes into `<v>` and the type that says how to read it. */
function stored(value: CellValue): { type?: string; text: string } {
  if (typeof value === "number")
    return Number.isFinite(value) ? { text: String(value) } : { type: "e", text: "#NUM!" };
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  if (typeof value === "object") return { type: "e", text: storedError(value.error) };
  return { type: "str", text: storedText(value) };
}

/** One sheet on its way into a file. */
export class SheetWriter {
  private readonly pieces: string[] = [];
  /** Cells that formulas fill, by row: values that stand in no cell of the model. */
  private readonly filled = new Map<number, Map<number, CellValue>>();

  constructor(
    private readonly book: WholeBook,
    private readonly sheet: WholeSheet,
    private readonly styles: StylesWriter,
    private readonly strings: SharedStrings,
  ) {}

  /**
   * @param active whether the file opens with this sheet
   * @param drawing relation of its charts, and of its tables
   */
  toXml(active: boolean, drawing: string | null, tables: readonly string[]): string {
    const { sheet } = this;
    this.noteFilled();
    const { print } = sheet;
    this.pieces.push(HEAD, `<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}">`);
    if (print?.fitWide) this.pieces.push('<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>');
    this.pieces.push(element("dimension", { ref: areaRef(this.used()) }), this.view(active));
    this.pieces.push('<sheetFormatPr defaultRowHeight="15"/>', this.columns());
    this.rows();
    this.pieces.push(this.merged(), this.bars(), this.rules());
    if (print)
      this.pieces.push(
        '<pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/>',
        element("pageSetup", {
          orientation: print.landscape ? "landscape" : "portrait",
          fitToHeight: print.fitWide ? 0 : undefined,
        }),
      );
    if (drawing !== null) this.pieces.push(element("drawing", { "r:id": drawing }));
    if (tables.length > 0)
      this.pieces.push(
        element(
          "tableParts",
          { count: tables.length },
          tables.map((id) => element("tablePart", { "r:id": id })).join(""),
        ),
      );
    this.pieces.push("</worksheet>");
    return this.pieces.join("");
  }

  private noteFilled(): void {
    for (const [row, cells] of this.sheet.cells)
      cells.forEach((cell, column) => {
        if (!cell?.fills) return;
        cell.fills.values.forEach((values, down) =>
          values.forEach((value, right) => {
            if ((down === 0 && right === 0) || value === "") return;
            const at = row + down;
            if (!this.filled.has(at)) this.filled.set(at, new Map());
            this.filled.get(at)!.set(column + right, value);
          }),
        );
      });
  }

  private used(): Area {
    let [bottom, right, top, left] = [1, 1, Infinity, Infinity];
    const see = (row: number, column: number): void => {
      [top, bottom] = [Math.min(top, row), Math.max(bottom, row)];
      [left, right] = [Math.min(left, column), Math.max(right, column)];
    };
    for (const [row, cells] of this.sheet.cells) {
      const first = cells.findIndex((cell) => cell !== undefined);
      if (first < 0) continue;
      see(row, first);
      see(row, cells.length - 1);
    }
    for (const [row, cells] of this.filled) for (const column of cells.keys()) see(row, column);
    return { top: Math.min(top, bottom), left: Math.min(left, right), bottom, right };
  }

  /** A pane without a split would be taken for damage. */
  private view(active: boolean): string {
    const { frozenRows, frozenColumns, gridLines } = this.sheet;
    const attributes = {
      showGridLines: gridLines ? undefined : 0,
      tabSelected: active ? 1 : undefined,
      workbookViewId: 0,
    };
    const pane = `${frozenRows > 0 ? "bottom" : "top"}${frozenColumns > 0 ? "Right" : "Left"}`;
    const split =
      frozenRows > 0 || frozenColumns > 0
        ? element("pane", {
            xSplit: frozenColumns || undefined,
            ySplit: frozenRows || undefined,
            topLeftCell: cellRef({ row: frozenRows + 1, column: frozenColumns + 1 }),
            activePane: pane,
            state: "frozen",
          }) + element("selection", { pane })
        : "";
    return `<sheetViews>${element("sheetView", attributes, split)}</sheetViews>`;
  }

  private columns(): string {
    const all = [...this.sheet.columns]
      .filter(([, { pixels, hidden, look }]) => pixels !== undefined || hidden || look)
      .sort(([a], [b]) => a - b)
      .map(([column, { pixels, hidden, look }]) =>
        element("col", {
          min: column,
          max: column,
          width: characters(pixels ?? USUAL_COLUMN),
          style: this.styles.of(look) || undefined,
          hidden: hidden && 1,
          customWidth: pixels === undefined ? undefined : 1,
        }),
      );
    return all.length === 0 ? "" : `<cols>${all.join("")}</cols>`;
  }

  private rows(): void {
    const { sheet, pieces } = this;
    const numbers = new Set([...sheet.cells.keys(), ...this.filled.keys(), ...sheet.rows.keys()]);
    pieces.push("<sheetData>");
    for (const row of [...numbers].sort((a, b) => a - b)) {
      const start = `<row r="${row}"${this.rowAttributes(sheet.rows.get(row))}`;
      const cells = this.rowCells(row);
      pieces.push(cells === "" ? `${start}/>` : `${start}>${cells}</row>`);
    }
    pieces.push("</sheetData>");
  }

  private rowAttributes(line: WholeLine | undefined): string {
    if (!line) return "";
    const style = this.styles.of(line.look);
    return (
      (style === 0 ? "" : ` s="${style}" customFormat="1"`) +
      (line.pixels === undefined ? "" : ` ht="${(line.pixels * 3) / 4}" customHeight="1"`) +
      (line.hidden ? ' hidden="1"' : "")
    );
  }

  private rowCells(row: number): string {
    const cells = this.sheet.cells.get(row) ?? [];
    const filled = this.filled.get(row);
    let text = "";
    if (!filled) {
      cells.forEach((cell, column) => {
        if (cell) text += this.cell(cell, row, column);
      });
      return text;
    }
    const last = Math.max(cells.length - 1, ...filled.keys());
    for (let column = 1; column <= last; column++) {
      const cell = cells[column];
      const value = filled.get(column);
      if (value !== undefined && cell?.formula === undefined)
        text += this.cell({ ...cell, value }, row, column);
      else if (cell) text += this.cell(cell, row, column);
    }
    return text;
  }

  private cell({ value, formula, fills, look }: WholeCell, row: number, column: number): string {
    const at = columnLetters(column) + row;
    const style = this.styles.of(look);
    const start = style === 0 ? `<c r="${at}"` : `<c r="${at}" s="${style}"`;
    if (formula === undefined) {
      if (value === "") return style === 0 ? "" : `${start}/>`;
      if (typeof value === "string") return `${start} t="s"><v>${this.strings.of(value)}</v></c>`;
    }
    const { type, text } = stored(value);
    const kind = type === undefined ? "" : ` t="${type}"`;
    const result = `<v${/^\s|\s$|\n/.test(text) ? ' xml:space="preserve"' : ""}>${text}</v>`;
    if (formula === undefined) return `${start}${kind}>${result}</c>`;
    const code = storedText(storedFormula(formula));
    if (!fills && !this.isArray(formula, row, column))
      return `${start}${kind}><f>${code}</f>${result}</c>`;
    const { rows, columns } = fills ?? { rows: 1, columns: 1 };
    const ref = areaRef({
      top: row,
      left: column,
      bottom: row + rows - 1,
      right: column + columns - 1,
    });
    return `${start}${kind} cm="1"><f t="array" ref="${ref}">${code}</f>${result}</c>`;
  }

  private isArray(formula: string, row: number, column: number): boolean {
    return mayFillMore(formula) && !this.sheet.tables.some(({ area }) => within(area, row, column));
  }

  private merged(): string {
    const all = this.sheet.merged.map((area) => element("mergeCell", { ref: areaRef(area) }));
    return all.length === 0 ? "" : element("mergeCells", { count: all.length }, all.join(""));
  }

  private bars(): string {
    return this.sheet.bars
      .map((area, index) =>
        element(
          "conditionalFormatting",
          { sqref: areaRef(area) },
          element(
            "cfRule",
            { type: "dataBar", priority: index + 1 },
            `<dataBar><cfvo type="num" val="0"/><cfvo type="num" val="1"/>${element("color", { rgb: BAR_COLOUR })}</dataBar>`,
          ),
        ),
      )
      .join("");
  }

  private rules(): string {
    const all = this.sheet.rules.flatMap((rule) => this.rule(rule) ?? []);
    return all.length === 0 ? "" : element("dataValidations", { count: all.length }, all.join(""));
  }

  private rule(rule: WholeRule): string | null {
    const first = this.source(rule);
    if (first === undefined && rule.type !== "none") return null;
    return element(
      "dataValidation",
      {
        type: rule.type,
        operator: rule.operator,
        allowBlank: rule.allowsBlank ? 1 : undefined,
        showInputMessage: rule.prompt === undefined ? undefined : 1,
        showErrorMessage: rule.refuses ? 1 : undefined,
        error: rule.error ?? (rule.type === "list" ? "Choose one of the list." : undefined),
        prompt: rule.prompt,
        sqref: rule.areas.map(areaRef).join(" "),
      },
      (first === undefined ? "" : element("formula1", {}, storedText(first))) +
        (rule.second === undefined
          ? ""
          : element("formula2", {}, storedText(storedFormula(rule.second)))),
    );
  }

  private source({ type, first }: WholeRule): string | undefined {
    if (first === undefined) return undefined;
    if (type !== "list" || first.startsWith("="))
      return growingColumn(this.book, first) ?? storedFormula(first);
    return `"${first.replaceAll('"', '""')}"`;
  }
}

/** Colour of the bars in cells. */
const BAR_COLOUR = "FFB9D6D8";

/** Pixels of a column of the usual width, and of the digit by which files measure columns (18.3.1.13). */
export const USUAL_COLUMN = 64;
const DIGIT = 7;
/** To the 256th part of a digit, as files have it. */
const characters = (pixels: number): number => Math.trunc((pixels / DIGIT) * 256) / 256;
export const pixelsOf = (width: number): number =>
  Math.trunc(((256 * width + Math.trunc(128 / DIGIT)) / 256) * DIGIT);

/** Rows below a table whose values a list takes in already, for what will be typed there. */
const SPARE_ROWS = 500;

/**
 * Cells of a table's column as a formula that follows the table as it grows; null for any other
 * formula. Table references are not allowed in lists, and a fixed range would miss rows typed later.
 */
function growingColumn(book: WholeBook, formula: string): string | null {
  const [, tableName = "", header] = /^=([^[\]]+)\[([^[\]]+)\]$/.exec(formula) ?? [];
  for (const { name: sheet, tables } of book.sheets)
    for (const { name, headers, area } of tables) {
      const index = headers.findIndex((each) => each.toLowerCase() === header?.toLowerCase());
      if (name.toLowerCase() === tableName.toLowerCase() && index >= 0)
        return growing(sheet, area.top, area.left + index);
    }
  return null;
}

function growing(sheet: string, top: number, column: number): string {
  const cell = (row: number): string => `$${columnLetters(column)}$${row}`;
  const at = quotedSheet(sheet);
  return `OFFSET(${at}!${cell(top)},1,0,MAX(1,COUNTA(${at}!${cell(top + 1)}:${cell(top + SPARE_ROWS)})),1)`;
}

/** A list's source as the page has it: such a formula as the column that it stands for. */
export function listSource(book: WholeBook, formula: string): string {
  const found = readSheetArea(/^=?OFFSET\(([^,]+),/.exec(formula)?.[1] ?? "");
  if (!found) return formula;
  const { top, left } = found.area;
  for (const { name: sheet, tables } of book.sheets)
    for (const { name, headers, area } of tables) {
      const header = headers[left - area.left];
      if (sheet !== found.sheet || area.top !== top || header === undefined) continue;
      if (formula.replace(/^=/, "") === growing(sheet, top, left)) return `=${name}[${header}]`;
    }
  return formula;
}

/** The formula that all cells of a table's column share; undefined where they do not. */
function columnFormula({ cells }: WholeSheet, area: Area, column: number): string | undefined {
  const first = cells.get(area.top + 1)?.[column]?.formula;
  if (first === undefined) return undefined;
  for (let row = area.top + 2; row <= area.bottom; row++)
    if (cells.get(row)?.[column]?.formula !== first) return undefined;
  return storedFormula(first);
}

/** Line ends in a header are written as _x000a_, as in the header's own cell they are a line break. */
const headerText = (header: string): string => header.replace(/\n/g, "_x000a_");

/** A table as a part of its own. */
export function tableXml(
  sheet: WholeSheet,
  { name, area, headers }: WholeTable,
  id: number,
): string {
  const ref = areaRef(area);
  const columns = headers.map((header, index) => {
    const formula = columnFormula(sheet, area, area.left + index);
    return element(
      "tableColumn",
      { id: index + 1, name: headerText(header) },
      formula === undefined ? "" : element("calculatedColumnFormula", {}, storedText(formula)),
    );
  });
  return (
    HEAD +
    element(
      "table",
      { xmlns: MAIN, id, name, displayName: name, ref, totalsRowShown: 0 },
      element("autoFilter", { ref }) +
        element("tableColumns", { count: columns.length }, columns.join("")) +
        element("tableStyleInfo", {
          name: "TableStyleLight1",
          showFirstColumn: 0,
          showLastColumn: 0,
          showRowStripes: 0,
          showColumnStripes: 0,
        }),
    )
  );
}
