/** A whole workbook out of the parts of a file, and what the file holds that a page cannot. */
import { findColumns } from "../../core/log/headings";
import { THROW_HEADERS } from "../../core/log/readThrows";
import { type Area, readArea, readSheetArea } from "../a1";
import type { NamePlan, SheetPlan } from "../blueprint/types";
import {
  type FormulaContent,
  readTables,
  readSheetCells,
  stringsOf,
  withinLimits,
} from "../package/readContent";
import { from1904, LAST_COLUMN, LAST_ROW, type StoredRow } from "../package/sheetCells";
import type { SheetPart, WorkbookPackage } from "../package/workbookPackage";
import { attributesOf, TagReader, type Tag } from "../package/xml";
import type {
  CellLook,
  WholeBook,
  WholeCell,
  WholeCells,
  WholeLine,
  WholeRule,
  WholeSheet,
  WholeTable,
} from "../wholeBook";
import { ourCharts, ourPrint } from "./ourCharts";
import { callsUs, functionsIn, OTHER_BOOK, typedFormula } from "./formulaText";
import { bodyOf } from "./plansToCalculate";
import { listSource, pixelsOf, USUAL_COLUMN } from "./sheetParts";
import { readLooks, themeColours } from "./styleParts";

export interface ReadBook {
  readonly book: WholeBook;
  /** What the file holds beyond that, in words, as "2 charts on Sums"; a save would not have it. */
  readonly beyond: readonly string[];
}

const count = (many: number, word: string): string => `${many} ${word}${many === 1 ? "" : "s"}`;
const isTrue = (text: string | undefined): boolean => text === "1" || text === "true";

/** Whether a number format shows a day or a time: a letter of theirs outside quotes and brackets. */
export const showsDay = (format: string | undefined): boolean =>
  format !== undefined && /[dmyhs]/i.test(format.replace(/"[^"]*"|\[[^\]]*\]|\\./g, ""));

/** Kinds of parts that a sheet may point to, in words. */
const KINDS: Readonly<Record<string, string>> = {
  comments: "cell notes",
  threadedComment: "comments",
  pivotTable: "pivot tables",
  hyperlink: "links",
  oleObject: "embedded objects",
  control: "form controls",
  slicer: "slicers",
  timeline: "timelines",
  queryTable: "data connections",
};

/** Elements of a sheet, in words. Those of its extension list are known by their local names. */
const ELEMENTS: Readonly<Record<string, string>> = {
  sheetProtection: "its protection",
  protectedRange: "its protection",
  autoFilter: "its filter",
  sortState: "its sorting",
  sparklineGroup: "sparklines",
  hyperlink: "links",
  scenarios: "scenarios",
  rowBreaks: "page breaks",
  colBreaks: "page breaks",
  headerFooter: "headers and footers",
  picture: "a background picture",
};

class SheetIn {
  private readonly beyond = new Set<string>();

  constructor(
    private readonly file: WorkbookPackage,
    private readonly part: SheetPart,
    private readonly strings: readonly string[],
    private readonly looks: readonly (CellLook | undefined)[],
    private readonly counts1904: boolean,
    private readonly knows: (name: string) => boolean,
  ) {}

  read(): { sheet: WholeSheet; beyond: string[] } {
    const { file, part } = this;
    const xml = file.xml(part.path);
    const { cells, rows, right } = this.cells();
    const tables = this.tables(cells);
    const frame = this.frame(withoutCells(xml), right);
    const charts = this.drawings();
    file.forget(part.path);
    const print = ourPrint(part.name);
    const sheet: WholeSheet = {
      name: part.name,
      hidden: part.hidden,
      cells,
      tables,
      charts,
      rows,
      ...frame,
      ...(print ? { print } : {}),
    };
    return { sheet, beyond: [...this.beyond].map((what) => `${what} on ${part.name}`) };
  }

  private cells(): { cells: WholeCells; rows: Map<number, WholeLine>; right: number } {
    const cells: WholeCells = new Map();
    const rows = new Map<number, WholeLine>();
    const filled: Area[] = [];
    let right = 0;
    const xml = this.file.xml(this.part.path);
    const eachRow = ({ row, tag }: StoredRow): void => {
      if (tag.end - tag.start > PLAIN_ROW) this.row(row, attributesOf(xml, tag), rows);
    };
    readSheetCells(xml, this.strings, eachRow, (cell, value, formula) => {
      const { row, column, style } = cell;
      const look = this.looks[style];
      if (filled.some((area) => holds(area, row, column))) {
        if (look) put(cells, row, column, { value: "", look });
        return;
      }
      if (formula?.array) {
        const { top, left, bottom, right: last } = formula.array;
        if (bottom > top || last > left) filled.push(formula.array);
        if (!formula.dynamic && (bottom > top || last > left))
          this.beyond.add("array formulas of a fixed size");
      }
      const isFormula = formula !== null && this.canHold(formula);
      const now = value ?? "";
      if (now === "" && !isFormula && !look) return;
      const day =
        this.counts1904 && typeof now === "number" && showsDay(look?.format) ? from1904(now) : now;
      put(cells, row, column, {
        value: day,
        ...(isFormula ? { formula: typedFormula(formula.text) } : {}),
        ...(look ? { look } : {}),
      });
      right = Math.max(right, column);
    });
    return { cells, rows, right };
  }

  /** Of a formula that the page cannot hold the value stays. */
  private canHold({ text, calculable }: FormulaContent): boolean {
    if (!calculable) this.beyond.add("a data table");
    else if (OTHER_BOOK.test(text)) this.beyond.add("formulas that read other workbooks");
    else {
      const unknown = functionsIn(text).filter((name) => !callsUs(text) && !this.knows(name));
      for (const name of unknown) this.beyond.add(`the values of formulas with ${name}`);
      return true;
    }
    return false;
  }

  private tables(cells: WholeCells): WholeTable[] {
    return readTables(this.file, this.part.path).flatMap((table) => {
      const area = bodyOf(table);
      if (!area) {
        this.beyond.add(`the table ${table.name}, of which the cells stay,`);
        return [];
      }
      if (table.totalRows > 0) this.beyond.add(`the total row of table ${table.name} as such`);
      const headers = table.headers.map((header, index) => {
        const shown = cells.get(area.top)?.[area.left + index]?.value;
        return typeof shown === "string" && shown !== "" ? shown : header;
      });
      return [{ name: table.name, area, headers }];
    });
  }

  /** All of a sheet but its cells. */
  private frame(
    xml: string,
    right: number,
  ): Omit<WholeSheet, "name" | "hidden" | "cells" | "rows" | "tables" | "charts" | "print"> {
    const columns = new Map<number, WholeLine>();
    const merged: Area[] = [];
    const rules: WholeRule[] = [];
    const bars: Area[] = [];
    let [frozenRows, frozenColumns, gridLines] = [0, 0, true];
    const reader = new TagReader(xml);
    let rule: { tag: Tag; first?: string; second?: string } | null = null;
    let formatted = "";
    for (let tag = reader.next(); tag; tag = reader.next()) {
      if (tag.kind === "close") {
        if (tag.name === "dataValidation" && rule) {
          const made = this.rule(xml, rule);
          if (made) rules.push(made);
          rule = null;
        }
        continue;
      }
      switch (tag.name) {
        case "sheetView":
          gridLines = attributesOf(xml, tag)["showGridLines"] !== "0";
          break;
        case "pane": {
          const { state, xSplit, ySplit } = attributesOf(xml, tag);
          if (state !== "frozen" && state !== "frozenSplit") break;
          frozenRows = Math.min(Math.trunc(Number(ySplit ?? 0)), LAST_ROW);
          frozenColumns = Math.min(Math.trunc(Number(xSplit ?? 0)), LAST_COLUMN);
          break;
        }
        case "col":
          this.column(attributesOf(xml, tag), right, columns);
          break;
        case "mergeCell": {
          const area = withinLimitsOf(attributesOf(xml, tag)["ref"]);
          if (area) merged.push(area);
          break;
        }
        case "conditionalFormatting":
          formatted = attributesOf(xml, tag)["sqref"] ?? formatted;
          break;
        case "cfRule":
          if (attributesOf(xml, tag)["type"] === "dataBar") {
            if (formatted !== "") bars.push(...areasOf(formatted));
          } else this.beyond.add("conditional formats");
          formatted = "";
          break;
        case "dataValidation":
          rule = { tag };
          if (tag.kind === "empty") rule = null;
          break;
        case "formula1":
          if (rule) rule.first = reader.text(tag);
          break;
        case "formula2":
          if (rule) rule.second = reader.text(tag);
          break;
        default: {
          const word = ELEMENTS[tag.name];
          if (word !== undefined) this.beyond.add(word);
        }
      }
    }
    return { columns, frozenRows, frozenColumns, gridLines, merged, rules, bars };
  }

  /** Columns far beyond what the sheet uses would cost much and show nothing. */
  private column(
    { min, max, width, hidden, style, customWidth }: Record<string, string>,
    right: number,
    columns: Map<number, WholeLine>,
  ): void {
    const first = Math.max(1, Math.trunc(Number(min)));
    const last = Math.min(Math.trunc(Number(max)), LAST_COLUMN, Math.max(right, 26) + 100);
    const look = this.looks[Number(style ?? 0)];
    const pixels = width === undefined ? undefined : pixelsOf(Number(width));
    const isUsual = pixels === undefined || (customWidth === undefined && pixels === USUAL_COLUMN);
    const line: WholeLine = {
      ...(isUsual ? {} : { pixels }),
      ...(isTrue(hidden) ? { hidden: true } : {}),
      ...(look && style !== "0" ? { look } : {}),
    };
    if (Object.keys(line).length === 0) return;
    for (let column = first; column <= last; column++) columns.set(column, line);
  }

  private row(
    row: number,
    { ht, customHeight, hidden, s, customFormat }: Record<string, string>,
    rows: Map<number, WholeLine>,
  ): void {
    const look = isTrue(customFormat) ? this.looks[Number(s ?? 0)] : undefined;
    const line: WholeLine = {
      ...(ht !== undefined && isTrue(customHeight)
        ? { pixels: Math.round((Number(ht) * 4) / 3) }
        : {}),
      ...(isTrue(hidden) ? { hidden: true } : {}),
      ...(look ? { look } : {}),
    };
    if (Object.keys(line).length > 0) rows.set(row, line);
  }

  private rule(
    xml: string,
    { tag, first, second }: { tag: Tag; first?: string; second?: string },
  ): WholeRule | null {
    const a = attributesOf(xml, tag);
    const areas = areasOf(a["sqref"] ?? "");
    const type = a["type"] ?? "none";
    if (type === "none" || areas.length === 0) return null;
    const isWords = type === "list" && first !== undefined && /^".*"$/s.test(first);
    const source =
      first === undefined
        ? undefined
        : isWords
          ? first.slice(1, -1).replaceAll('""', '"')
          : type === "list" || !/^-?[\d.]+$/.test(first)
            ? typedFormula(first)
            : first;
    const error = a["error"] === "Choose one of the list." ? undefined : a["error"];
    return {
      areas,
      type,
      ...(type === "list" || a["operator"] === undefined ? {} : { operator: a["operator"] }),
      ...(source === undefined ? {} : { first: source }),
      ...(second === undefined ? {} : { second }),
      allowsBlank: isTrue(a["allowBlank"]),
      refuses: isTrue(a["showErrorMessage"]) && (a["errorStyle"] ?? "stop") === "stop",
      ...(error === undefined ? {} : { error }),
      ...(a["prompt"] === undefined ? {} : { prompt: a["prompt"] }),
    };
  }

  /** Charts of ours, which the page knows; all others are named. */
  private drawings(): SheetPlan["charts"] & object {
    const { file, part } = this;
    for (const { kind } of file.relationsOf(part.path)) {
      const word = KINDS[kind];
      if (word !== undefined) this.beyond.add(word);
    }
    const drawings = file.related(part.path, "drawing");
    const charts = drawings.flatMap((path) => file.related(path, "chart"));
    const ours = ourCharts(
      part.name,
      charts.map((path) => file.xml(path)),
    );
    if (charts.length > ours.length) this.beyond.add(count(charts.length - ours.length, "chart"));
    const others = drawings.flatMap((path) => {
      const text = file.xml(path);
      const pictures = (text.match(/<(\w+:)?pic[\s>]/g) ?? []).length;
      const shapes = (text.match(/<(\w+:)?(sp|cxnSp)[\s>]/g) ?? []).length;
      return [
        ...(pictures > 0 ? [count(pictures, "picture")] : []),
        ...(shapes > 0 ? [count(shapes, "drawn shape")] : []),
      ];
    });
    for (const word of others) this.beyond.add(word);
    return ours;
  }
}

/** Length of a row's tag that says its number only. */
const PLAIN_ROW = `<row r="${LAST_ROW}">`.length;

/** The text of a sheet without what its rows hold. */
function withoutCells(xml: string): string {
  const start = /<(\w+:)?sheetData[\s/>]/.exec(xml)?.index ?? xml.length;
  const end = /<\/(\w+:)?sheetData\s*>/g;
  end.lastIndex = Math.max(0, xml.lastIndexOf("sheetData") - 40);
  const close = end.exec(xml);
  return close ? xml.slice(0, start) + xml.slice(close.index + close[0].length) : xml;
}

const holds = ({ top, left, bottom, right }: Area, row: number, column: number): boolean =>
  row >= top && row <= bottom && column >= left && column <= right;

function put(cells: WholeCells, row: number, column: number, cell: WholeCell): void {
  let line = cells.get(row);
  if (!line) cells.set(row, (line = []));
  line[column] = cell;
}

const withinLimitsOf = (ref: string | undefined): Area | null => {
  const area = readArea(ref ?? "");
  return area && withinLimits(area);
};

/** Areas of a list of references; whole columns and rows reach to the limits of a sheet. */
const areasOf = (text: string): Area[] =>
  text.split(/\s+/).flatMap((ref) => withinLimitsOf(ref) ?? []);

/** Rows in which the header of a log is looked for. */
const SEARCHED = 20;

/** Days in a log's column of dates that no format tells from other numbers, of a 1904 workbook. */
function countPlainDays({ cells }: WholeSheet): void {
  for (let row = 1; row <= SEARCHED; row++) {
    const headers = Array.from(cells.get(row) ?? [], (cell) => cell?.value ?? "");
    const { date, disc, carry } = findColumns(headers, THROW_HEADERS);
    if (!date || !disc || !carry) continue;
    for (const [at, line] of cells) {
      const cell = at > row ? line[date.index] : undefined;
      if (typeof cell?.value !== "number" || showsDay(cell.look?.format)) continue;
      if (cell.formula === undefined) line[date.index] = { ...cell, value: from1904(cell.value) };
    }
    return;
  }
}

/** Names that spreadsheets make for themselves begin so. */
const OWN_NAME = /^_xl/i;

function namesOf(file: WorkbookPackage): { names: NamePlan[]; lost: string[] } {
  const sheets = file.sheets();
  const lost: string[] = [];
  const names = file.definedNames().flatMap(({ name, refersTo, sheetIndex }) => {
    if (OWN_NAME.test(name) || refersTo === "") return [];
    const sheet = sheetIndex === undefined ? undefined : sheets[sheetIndex];
    if (OTHER_BOOK.test(refersTo) || (sheetIndex !== undefined && !sheet?.isGrid)) {
      lost.push(`the name ${name}`);
      return [];
    }
    return [{ name, refersTo: typedFormula(refersTo), ...(sheet ? { sheet: sheet.name } : {}) }];
  });
  return { names, lost };
}

/** What lies in the package beside its sheets, in words. */
const PACKAGE_PARTS: readonly (readonly [RegExp, string])[] = [
  [/vbaProject\.bin$/i, "macros"],
  [/^xl\/externalLinks\/[^/]+\.xml$/i, "links to other workbooks"],
  [/^xl\/connections\.xml$/i, "data connections"],
  [/^xl\/model\//i, "a data model"],
  [/^customXml\/item\d/i, "custom data"],
  [/^docProps\/custom\.xml$/i, "custom properties"],
];

/**
 * Reads all that a page can hold.
 * @param knows whether a function of this name, in capitals, can be worked out there
 * @throws PortError "invalid" where a part is damaged
 */
export function readWhole(
  file: WorkbookPackage,
  knows: (name: string) => boolean = () => true,
): ReadBook {
  const theme = file.related(file.workbookPath, "theme")[0];
  const styles = file.related(file.workbookPath, "styles")[0];
  const looks =
    styles === undefined
      ? []
      : readLooks(file.xml(styles), theme === undefined ? [] : themeColours(file.xml(theme)));
  const strings = stringsOf(file);
  const beyond = file.isSigned ? ["its digital signature"] : [];
  const found = PACKAGE_PARTS.filter(([path]) => file.paths.some((each) => path.test(each))).map(
    ([, words]) => words,
  );
  beyond.push(...found);
  const sheets = file.sheets().flatMap((part) => {
    if (!part.isGrid) {
      beyond.push(`the sheet ${part.name}, which has no cells`);
      return [];
    }
    const { sheet, beyond: more } = new SheetIn(
      file,
      part,
      strings,
      looks,
      file.counts1904,
      knows,
    ).read();
    beyond.push(...more);
    if (file.counts1904) countPlainDays(sheet);
    return [sheet];
  });
  const { names, lost } = namesOf(file);
  const book = { sheets, names };
  const withLists = sheets.map((sheet) => ({
    ...sheet,
    rules: sheet.rules.map((rule) =>
      rule.type === "list" && rule.first !== undefined
        ? { ...rule, first: listSource(book, rule.first) }
        : rule,
    ),
  }));
  return { book: { sheets: withLists, names }, beyond: [...beyond, ...lost] };
}

/** Whether a file is a workbook of ours: the tables and names that the page lives on. */
export const isOurs = ({ sheets, names }: WholeBook): boolean =>
  sheets.some(({ tables }) => tables.some(({ name }) => name === "Throws")) &&
  names.some(({ name, refersTo }) => name === "Settings" && readSheetArea(refersTo.slice(1)));
