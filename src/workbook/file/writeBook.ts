/**
 * A workbook as the bytes of an .xlsx file, every part as Excel itself writes it. The same workbook
 * gives the same bytes: the clock stays out of them.
 */
import { strToU8, zipSync } from "fflate";
import { quotedSheet } from "../a1";
import type { WholeBook, WholeCells, WholeSheet } from "../wholeBook";
import { chartXml, drawingXml } from "./chartParts";
import { callsUs, storedFormula } from "./formulaText";
import { SharedStrings, SheetWriter, tableXml } from "./sheetParts";
import { StylesWriter } from "./styleParts";
import { element, HEAD, MAIN, OFFICE, PACKAGE, storedText } from "./xmlText";

/** Of a large log this takes half the time of the usual level 6, for a tenth more bytes. */
const LEVEL = 3;
/** The earliest time that a zip file can hold. */
const FIXED_TIME = new Date(1980, 0, 1);
/**
 * The engine that worked the values out, as Excel since 2019 says it. With an older one Excel would
 * work everything out on opening, and show #NAME? where the add-in is not there yet.
 */
const CALCULATED_BY = 191029;

const SPREADSHEET = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const DRAWING = "application/vnd.openxmlformats-officedocument";

const METADATA =
  HEAD +
  `<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray"><metadataTypes count="1"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata></metadata>`;

interface Relation {
  readonly kind: string;
  readonly target: string;
}

/** Relations of a part, numbered in order: rId1, rId2 and so on. */
const relationsXml = (relations: readonly Relation[]): string =>
  HEAD +
  element(
    "Relationships",
    { xmlns: `${PACKAGE}/relationships` },
    relations
      .map(({ kind, target }, index) =>
        element("Relationship", {
          Id: `rId${index + 1}`,
          Type: kind.includes("/") ? kind : `${OFFICE}/${kind}`,
          Target: target,
        }),
      )
      .join(""),
  );

/** Parts by path, with the content types that the package lists. */
class Parts {
  readonly files: Record<string, Uint8Array> = {};
  private readonly types: string[] = [];

  add(path: string, xml: string, type?: string): void {
    this.files[path] = strToU8(xml);
    if (type !== undefined)
      this.types.push(element("Override", { PartName: `/${path}`, ContentType: type }));
  }

  /** The list of content types goes first, as in files of Excel. */
  toBytes(): Uint8Array {
    const defaults =
      '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/>';
    const types =
      HEAD +
      element("Types", { xmlns: `${PACKAGE}/content-types` }, defaults + this.types.join(""));
    return zipSync(
      { "[Content_Types].xml": strToU8(types), ...this.files },
      { mtime: FIXED_TIME, level: LEVEL },
    );
  }
}

/** Headers of a table are text and differ from each other, whatever their cells hold. */
function withTextHeaders(sheet: WholeSheet): WholeSheet {
  const cells: WholeCells = new Map(sheet.cells);
  const tables = sheet.tables.map((table) => {
    const { top, left } = table.area;
    const row = [...(cells.get(top) ?? [])];
    const used = new Set<string>();
    const headers = table.headers.map((header, index) => {
      const wanted = header === "" ? `Column${index + 1}` : header;
      let text = wanted;
      for (let n = 2; used.has(text.toLowerCase()); n++) text = `${wanted}${n}`;
      used.add(text.toLowerCase());
      const { look } = row[left + index] ?? {};
      row[left + index] = { value: text, ...(look ? { look } : {}) };
      return text;
    });
    cells.set(top, row);
    return { ...table, headers };
  });
  return { ...sheet, cells, tables };
}

function addSheet(
  parts: Parts,
  book: WholeBook,
  index: number,
  counts: { tables: number; drawings: number; charts: number },
  styles: StylesWriter,
  strings: SharedStrings,
): void {
  const sheet = book.sheets[index]!;
  const relations: Relation[] = [];
  let drawing: string | null = null;
  if (sheet.charts.length > 0) {
    const number = ++counts.drawings;
    relations.push({ kind: "drawing", target: `../drawings/drawing${number}.xml` });
    drawing = "rId1";
    const charts = sheet.charts.map((plan) => {
      const chart = ++counts.charts;
      parts.add(`xl/charts/chart${chart}.xml`, chartXml(plan), `${DRAWING}.drawingml.chart+xml`);
      return { kind: "chart", target: `../charts/chart${chart}.xml` };
    });
    const path = `xl/drawings/drawing${number}.xml`;
    parts.add(path, drawingXml(sheet.charts), `${DRAWING}.drawing+xml`);
    parts.add(`xl/drawings/_rels/drawing${number}.xml.rels`, relationsXml(charts));
  }
  const tables = sheet.tables.map((table) => {
    const number = ++counts.tables;
    const path = `xl/tables/table${number}.xml`;
    parts.add(path, tableXml(sheet, table, number), `${SPREADSHEET}.table+xml`);
    relations.push({ kind: "table", target: `../tables/table${number}.xml` });
    return `rId${relations.length}`;
  });
  const shown = book.sheets.findIndex(({ hidden }) => !hidden);
  const xml = new SheetWriter(book, sheet, styles, strings).toXml(index === shown, drawing, tables);
  parts.add(`xl/worksheets/sheet${index + 1}.xml`, xml, `${SPREADSHEET}.worksheet+xml`);
  if (relations.length > 0)
    parts.add(`xl/worksheets/_rels/sheet${index + 1}.xml.rels`, relationsXml(relations));
}

/** Names of the workbook, and those by which files know what a sheet prints (18.2.5). */
function namesXml({ sheets, names }: WholeBook): string {
  const own = names.map(({ name, refersTo, sheet }) => {
    const at = sheets.findIndex((each) => each.name === sheet);
    return { name, at: sheet === undefined ? undefined : at, text: storedFormula(refersTo) };
  });
  const printed = sheets.flatMap(({ name, print }, at) => [
    ...(print?.area === undefined
      ? []
      : [{ name: "_xlnm.Print_Area", at, text: fixedArea(name, print.area) }]),
    ...(print?.titleRows === undefined
      ? []
      : [{ name: "_xlnm.Print_Titles", at, text: `${quotedSheet(name)}!$1:$${print.titleRows}` }]),
  ]);
  const all = [...printed, ...own].map(({ name, at, text }) =>
    element("definedName", { name, localSheetId: at }, storedText(text)),
  );
  return all.length === 0 ? "" : element("definedNames", {}, all.join(""));
}

const fixedArea = (sheet: string, area: string): string => {
  const [first = "", second = first] = area.split(":");
  const fixed = (cell: string): string => cell.replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");
  return `${quotedSheet(sheet)}!${fixed(first)}:${fixed(second)}`;
};

function workbookXml(book: WholeBook): string {
  const shown = Math.max(
    0,
    book.sheets.findIndex(({ hidden }) => !hidden),
  );
  const sheets = book.sheets.map(({ name, hidden }, index) =>
    element("sheet", {
      name,
      sheetId: index + 1,
      state: hidden ? "hidden" : undefined,
      "r:id": `rId${index + 1}`,
    }),
  );
  return (
    HEAD +
    element(
      "workbook",
      { xmlns: MAIN, "xmlns:r": OFFICE },
      element("workbookPr", { filterPrivacy: 1 }) +
        element("bookViews", {}, element("workbookView", { activeTab: shown || undefined })) +
        element("sheets", {}, sheets.join("")) +
        namesXml(book) +
        element("calcPr", { calcId: CALCULATED_BY }),
    )
  );
}

/** @returns the bytes of an .xlsx file */
export function fileOf(whole: WholeBook): Uint8Array {
  const book = { ...whole, sheets: whole.sheets.map(withTextHeaders) };
  const parts = new Parts();
  const styles = new StylesWriter();
  const strings = new SharedStrings();
  parts.add(
    "_rels/.rels",
    relationsXml([
      { kind: "officeDocument", target: "xl/workbook.xml" },
      { kind: `${PACKAGE}/relationships/metadata/core-properties`, target: "docProps/core.xml" },
      { kind: "extended-properties", target: "docProps/app.xml" },
    ]),
  );
  parts.add("xl/workbook.xml", workbookXml(book), `${SPREADSHEET}.sheet.main+xml`);
  parts.add(
    "xl/_rels/workbook.xml.rels",
    relationsXml([
      ...book.sheets.map((_, index) => ({
        kind: "worksheet",
        target: `worksheets/sheet${index + 1}.xml`,
      })),
      { kind: "styles", target: "styles.xml" },
      { kind: "sharedStrings", target: "sharedStrings.xml" },
      { kind: "sheetMetadata", target: "metadata.xml" },
    ]),
  );
  const counts = { tables: 0, drawings: 0, charts: 0 };
  book.sheets.forEach((_, index) => addSheet(parts, book, index, counts, styles, strings));
  parts.add("xl/styles.xml", styles.toXml(), `${SPREADSHEET}.styles+xml`);
  parts.add("xl/sharedStrings.xml", strings.toXml(), `${SPREADSHEET}.sharedStrings+xml`);
  parts.add("xl/metadata.xml", METADATA, `${SPREADSHEET}.sheetMetadata+xml`);
  parts.add(
    "docProps/core.xml",
    HEAD +
      `<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:title>Carrybook</dc:title><dc:creator>Carrybook</dc:creator></cp:coreProperties>`,
    "application/vnd.openxmlformats-package.core-properties+xml",
  );
  parts.add(
    "docProps/app.xml",
    HEAD +
      '<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Microsoft Excel</Application></Properties>',
    "application/vnd.openxmlformats-officedocument.extended-properties+xml",
  );
  return parts.toBytes();
}

/**
 * The workbook for programs that have neither the add-in nor formulas which fill several cells: those
 * formulas become their last values; plain ones stay. Needed because LibreOffice works them out anew on
 * opening, and then shows an error where the value stood.
 */
export function withoutOurs(book: WholeBook): WholeBook {
  const sheets = book.sheets.map((sheet) => {
    const cells: WholeCells = new Map([...sheet.cells].map(([row, line]) => [row, [...line]]));
    for (const [row, line] of sheet.cells)
      line.forEach((cell, column) => {
        if (cell?.formula === undefined || (!cell.fills && !callsUs(cell.formula))) return;
        const values = cell.fills?.values ?? [[cell.value]];
        values.forEach((filled, down) =>
          filled.forEach((value, right) => {
            if (!cells.has(row + down)) cells.set(row + down, []);
            const at = cells.get(row + down)!;
            const { look } = at[column + right] ?? {};
            at[column + right] = { value, ...(look ? { look } : {}) };
          }),
        );
      });
    return { ...sheet, cells };
  });
  return { ...book, sheets };
}
