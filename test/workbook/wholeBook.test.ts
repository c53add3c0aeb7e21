/** The workbook of the page to a file and back, as far as it goes: page → file → page → file. */
import { readWhole } from "../../src/workbook/file/readWhole";
import { fileOf } from "../../src/workbook/file/writeBook";
import { WorkbookPackage } from "../../src/workbook/package/workbookPackage";
import { starterBlueprint } from "../../src/workbook/blueprint";
import type { WholeBook } from "../../src/workbook/wholeBook";
import { bundleInNode } from "../../src/page/bundleInNode";
import { type HeadlessWorkbook, openHeadless } from "../../src/page/headless";
import { handMadeWorkbook } from "../support/handMadeWorkbook";
import { hasLibreOffice, savedByLibreOffice } from "../support/libreOffice";
import { hasOpenpyxl, madeByOpenpyxl, readByOpenpyxl } from "../support/openpyxl";
import { factsOf } from "../support/wholeBooks";

jest.setTimeout(240_000);

const bundle = bundleInNode("dist");

async function opened(book: WholeBook): Promise<HeadlessWorkbook> {
  const page = await openHeadless({ sheets: [{ name: "Sheet1", blocks: [] }] }, bundle);
  await page.port.replaceWhole(book);
  await page.calculated();
  return page;
}

const read = (bytes: Uint8Array): WholeBook => readWhole(WorkbookPackage.read(bytes)).book;

/** What the page holds of a file, and what it holds of the file that it makes of that. */
async function twice(book: WholeBook): Promise<{ first: WholeBook; second: WholeBook }> {
  const page = await opened(book);
  const first = page.port.whole();
  page.close();
  const again = await opened(read(fileOf(first)));
  const second = again.port.whole();
  again.close();
  return { first, second };
}

/** Facts of a workbook without its answers, which only a program that calculates has. */
const typedFacts = (book: WholeBook): string[] =>
  factsOf(
    {
      ...book,
      sheets: book.sheets.map((sheet) => ({
        ...sheet,
        cells: new Map(
          [...sheet.cells].map(([row, line]) => [
            row,
            line.map(
              (cell) =>
                cell && {
                  value: cell.formula === undefined ? cell.value : "",
                  ...(cell.formula === undefined ? {} : { formula: cell.formula }),
                },
            ),
          ]),
        ),
      })),
    },
    false,
  );

describe("the starter", () => {
  it("comes back from a file equal, cell by cell and name by name", async () => {
    const page = await openHeadless(starterBlueprint(), bundle);
    const before = page.port.whole();
    page.close();
    const { first, second } = await twice(read(fileOf(before)));
    expect(factsOf(first)).toEqual(factsOf(before));
    expect(factsOf(second)).toEqual(factsOf(before));
  });
});

/** The starter with what a player may add anywhere in it. */
function withOwnThings(book: WholeBook): WholeBook {
  const sheets = book.sheets.map((sheet) => {
    const cells = new Map([...sheet.cells].map(([row, line]) => [row, [...line]]));
    const put = (row: number, column: number, value: string | number, formula?: string): void => {
      if (!cells.has(row)) cells.set(row, []);
      const { look } = cells.get(row)![column] ?? {};
      const content = formula === undefined ? { value } : { value, formula };
      cells.get(row)![column] = look ? { ...content, look } : content;
    };
    if (sheet.name === "Rounds") {
      put(30, 16, "two spaces  and a\nline & <sign>");
      put(31, 16, 42, "=6*7");
    }
    if (sheet.name !== "Log") return { ...sheet, cells };
    const [table] = sheet.tables;
    const { area } = table!;
    put(area.top, area.right + 1, "Shoes");
    for (let row = area.top + 1; row <= area.bottom; row++) put(row, area.right + 1, `pair ${row}`);
    put(area.bottom + 1, area.left, "not a throw");
    const wider = { ...area, right: area.right + 1 };
    const tables = [{ ...table!, area: wider, headers: [...table!.headers, "Shoes"] }];
    return { ...sheet, cells, tables };
  });
  const look = { bold: true, fill: "ffeedd", format: "0.00", wraps: true } as const;
  const own = {
    name: "It's mine",
    hidden: false,
    cells: new Map([
      [1, [undefined, { value: "Disc", look }, { value: "" }, { value: "Way" }]],
      [2, [undefined, { value: "Copper" }, { value: 1 }, { value: "" }]],
      [3, [undefined, { value: "" }, { value: 2 }, { value: "north" }]],
      // The first row of the answer begins with a number and goes on with a blank.
      [6, [undefined, { value: 1, formula: "=FILTER('It''s mine'!B2:C3,'It''s mine'!B2:B3>0)" }]],
      [9, [undefined, { value: "TRUE" }, { value: "00123" }, { value: "#N/A in words" }]],
    ]),
    columns: new Map([
      [2, { pixels: 133 }],
      [4, { hidden: true as const }],
    ]),
    rows: new Map([
      [2, { pixels: 44 }],
      [9, { hidden: true as const }],
    ]),
    frozenRows: 1,
    frozenColumns: 2,
    gridLines: false,
    tables: [],
    merged: [{ top: 11, left: 1, bottom: 12, right: 2 }],
    rules: [
      {
        areas: [{ top: 2, left: 2, bottom: 3, right: 2 }],
        type: "decimal",
        operator: "between",
        first: "0",
        second: "9",
        allowsBlank: true,
        refuses: true,
      },
    ],
    bars: [],
    charts: [],
  };
  const names = [
    ...book.names,
    { name: "Share", refersTo: "=0.25" },
    { name: "MyBlock", refersTo: "='It''s mine'!$A$1:$C$3" },
  ];
  return { sheets: [...sheets, own, { ...own, name: "Pocket", hidden: true }], names };
}

describe("what the player added", () => {
  it("stays through files: notes, formulas, names, columns, sheets, spills with blanks", async () => {
    const page = await openHeadless(starterBlueprint(), bundle);
    const wanted = withOwnThings(page.port.whole());
    page.close();
    const { first, second } = await twice(wanted);
    expect(typedFacts(first)).toEqual(typedFacts(wanted));
    expect(factsOf(second)).toEqual(factsOf(first));
    const mine = read(fileOf(second)).sheets.find(({ name }) => name === "It's mine")!;
    expect(mine.cells.get(6)![1]!.formula).toContain("FILTER");
    const filled = second.sheets.find(({ name }) => name === "It's mine")!.cells.get(6)![1]!.fills;
    expect(filled?.values).toEqual([
      [1, ""],
      [2, "north"],
    ]);
  });
});

describe("another program's workbook", () => {
  /** Names, an own sheet, extra columns, notes, formulas new and old, looks, lists, widths. */
  (hasOpenpyxl() ? it : it.skip)("made by openpyxl stays as the page took it", async () => {
    const bytes = madeByOpenpyxl();
    const { book, beyond } = readWhole(WorkbookPackage.read(bytes));
    expect(beyond.join()).toMatch(/cell notes on Field.*1 chart on Sums/);
    const { first, second } = await twice(book);
    expect(typedFacts(first)).toEqual(typedFacts(book));
    expect(factsOf(second)).toEqual(factsOf(first));
    const cells = first.sheets[0]!.cells;
    expect(cells.get(2)![3]!.value).toBe(301.5);
    expect(cells.get(12)![3]!.value).toBeCloseTo(603, 9);
  });

  (hasLibreOffice() && hasOpenpyxl() ? it : it.skip)(
    "saved by LibreOffice stays as the page took it",
    async () => {
      const { book } = readWhole(WorkbookPackage.read(savedByLibreOffice(madeByOpenpyxl())));
      const { first, second } = await twice(book);
      expect(typedFacts(first)).toEqual(typedFacts(book));
      expect(factsOf(second)).toEqual(factsOf(first));
    },
  );

  it("put together by hand, with days counted from 1904 and columns without end", async () => {
    const bytes = handMadeWorkbook({
      workbookPr: '<workbookPr date1904="1"/>',
      sheets: {
        Old: `<cols><col min="1" max="999999999" width="20" customWidth="1"/></cols><sheetData><row r="1"><c r="A1" s="1"><v>41300</v></c><c r="B1" t="inlineStr"><is><t>x</t></is></c></row><row r="2"><c r="A2"><f>SUM(C1:C2)</f><v>0</v></c></row></sheetData>`,
      },
      parts: {
        "xl/styles.xml":
          '<styleSheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><fonts><font/></fonts><fills><fill/></fills><borders><border/></borders><cellXfs><xf/><xf numFmtId="14"/></cellXfs></styleSheet>',
        "xl/_rels/workbook.xml.rels":
          '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="s1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/><Relationship Id="s2" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/styles" Target="styles.xml"/></Relationships>',
      },
    });
    const book = read(bytes);
    // ECMA-376 part 1, 18.17.4.1: day 41300 of the 1904 system is day 42762 of the 1900 system.
    expect(book.sheets[0]!.cells.get(1)![1]!.value).toBe(42762);
    expect(book.sheets[0]!.columns.size).toBeLessThan(200);
    const { first, second } = await twice(book);
    expect(typedFacts(first)).toEqual(typedFacts(book));
    expect(factsOf(second)).toEqual(factsOf(first));
  });
});

it("counts the days of a log from 1904 even where no format shows that they are days", () => {
  const text = (ref: string, word: string): string =>
    `<c r="${ref}" t="inlineStr"><is><t>${word}</t></is></c>`;
  const book = read(
    handMadeWorkbook({
      workbookPr: '<workbookPr date1904="1"/>',
      sheets: {
        Log: `<sheetData><row r="1">${text("A1", "Disc")}${text("B1", "Carry")}${text("C1", "Date")}</row><row r="2">${text("A2", "Copper mid")}<c r="B2"><v>301</v></c><c r="C2"><v>44692</v></c></row></sheetData>`,
      },
    }),
  );
  // 12 May 2026 is day 46154 where days are counted from 1900 (as LibreOffice numbers it), 1462 more.
  expect(
    book.sheets[0]!.cells.get(2)!
      .map((cell) => cell?.value)
      .slice(2),
  ).toEqual([301, 46154]);
});

describe("what a page cannot keep", () => {
  it("is named, sheet by sheet", () => {
    const { beyond } = readWhole(
      WorkbookPackage.read(
        handMadeWorkbook({
          sheets: {
            A: '<sheetData><row r="1"><c r="A1"><f>[1]Other!A1</f><v>5</v></c></row></sheetData><sheetProtection sheet="1"/><conditionalFormatting sqref="A1"><cfRule type="cellIs" priority="1"/></conditionalFormatting>',
          },
          parts: { "xl/vbaProject.bin": "x", "xl/externalLinks/externalLink1.xml": "<a/>" },
        }),
      ),
    );
    expect(beyond).toEqual([
      "macros",
      "links to other workbooks",
      "formulas that read other workbooks on A",
      "its protection on A",
      "conditional formats on A",
    ]);
  });

  (hasOpenpyxl() ? it : it.skip)("openpyxl reads what we write", async () => {
    const page = await openHeadless(starterBlueprint(), bundle);
    const book = page.port.whole();
    page.close();
    const found = readByOpenpyxl(fileOf(book));
    expect(found.sheets).toEqual(book.sheets.map(({ name }) => name));
    const tables = book.sheets.flatMap((sheet) => sheet.tables.map(({ name }) => name));
    expect(found.tables).toEqual(tables.sort());
    expect(found.names).toEqual(book.names.map(({ name }) => name).sort());
    // A formula of each kind, as the file format writes it.
    expect(found.formulas["Start!B17"]).toBe(
      "=_xldudf_CARRY_PLAYSLIKE($B$12,$B$13,$B$14,,Settings)",
    );
    expect(found.formulas["Card!AD6"]).toContain("_xlfn._xlws.FILTER(");
  });
});
