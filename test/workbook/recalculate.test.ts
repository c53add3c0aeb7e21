/** `npm run workbook` on other people's files: only stored values change. Needs what stands in dist. */
import { resolve } from "node:path";
import { bundleInNode } from "../../src/page/bundleInNode";
import { openHeadless } from "../../src/page/headless";
import { recalculate } from "../../src/workbook/file/recalculate";
import { WorkbookPackage } from "../../src/workbook/package/workbookPackage";
import { handMadeParts, handMadeWorkbook, type HandMade } from "../support/handMadeWorkbook";

const bundle = bundleInNode(resolve(__dirname, "../../dist"));
const run = async (bytes: Uint8Array) =>
  recalculate(WorkbookPackage.read(bytes), bytes, (blueprint) => openHeadless(blueprint, bundle));
const sheet = (bytes: Uint8Array, number = 1): string =>
  WorkbookPackage.read(bytes).xml(`xl/worksheets/sheet${number}.xml`);
const data = (rows: string): string => `<sheetData>${rows}</sheetData>`;
/** The whole cell as it is stored. */
const cell = (xml: string, ref: string): string =>
  new RegExp(`<(?:\\w+:)?c [^>]*r="${ref}"[^>]*?(?:/>|>.*?</(?:\\w+:)?c>)`, "s").exec(xml)?.[0] ??
  "";

const LOG = [
  '<row r="1"><c r="A1" t="s"><v>0</v></c><c r="B1" t="inlineStr"><is><t>Carry</t></is></c></row>',
  '<row r="2"><c r="A2" t="s"><v>1</v></c><c r="B2"><v>300</v></c></row>',
  '<row r="3"><c r="A3" t="s"><v>1</v></c><c r="B3"><v>310</v></c></row>',
  '<row r="4"><c r="A4" t="s"><v>2</v></c><c r="B4"><v>350</v></c></row>',
].join("");
const STRINGS = [
  "<t>Disc</t>",
  '<r><t>Copper </t></r><r><rPr><b/></rPr><t>mid</t></r><rPh sb="0" eb="1"><t>x</t></rPh>',
  '<t xml:space="preserve">Mint fairway</t>',
];
const TABLE =
  'id="1" name="Throws" displayName="Throws" ref="A1:B4"><tableColumns count="2"><tableColumn id="1" name="Disc"/><tableColumn id="2" name="Carry"/></tableColumns>';

const FOREIGN: HandMade = {
  strings: STRINGS,
  sheets: {
    "Log of O'Neil": data(LOG) + '<legacyDrawing r:id="c1"/>',
    Sums: data(
      [
        '<row r="1"><c r="A1" s="3"><f>_xlfn.STDEV.S(\'Log of O\'\'Neil\'!B2:B4)</f></c><c r="B1"><f>SUM(Throws[Carry])*Half</f><v>1</v></c></row>',
        '<row r="2"><c r="A2"><f t="shared" ref="A2:A3" si="0">B2*2</f><v>0</v></c><c r="B2"><v>4</v></c></row>',
        '<row r="3"><c r="A3"><f t="shared" si="0"/></c><c r="B3"><v>5</v></c></row>',
        '<row r="4" spans="1:2"><c r="A4" cm="1"><f t="array" ref="A4:B9">_xldudf_CARRY_CARD(Throws[#All])</f><v>0</v></c></row>',
        '<row r="9"><c r="B9" s="2"><v>77</v></c></row>',
        '<row r="20"><c r="A20" t="str"><f>IF(B2&gt;3,"a &lt; b","")</f><v>old</v></c><c r="B20"><f>LATER(1)</f><v>7</v></c><c r="C20"><f>B20+1</f><v>8</v></c><c r="D20"><f>1+1</f><v>2</v></c></row>',
      ].join(""),
    ),
  },
  tables: { "Log of O'Neil": TABLE },
  workbook:
    '<definedNames><definedName name="Half">0.5</definedName><definedName name="All">\'Log of O\'\'Neil\'!$A$1:$XFD$1048576</definedName></definedNames><calcPr calcId="191029"/>',
  parts: {
    "xl/comments1.xml": "<comments/>",
    "xl/charts/chart1.xml": "<chart   odd='spacing'/>",
    "docProps/custom.xml": "<Properties/>",
  },
};

describe("a foreign workbook", () => {
  const bytes = handMadeWorkbook(FOREIGN);
  let done: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    done = await run(bytes);
  });

  test("keeps every other part byte for byte", () => {
    const [before, after] = [WorkbookPackage.read(bytes), WorkbookPackage.read(done.bytes)];
    expect(after.paths).toEqual(before.paths);
    for (const path of before.paths.filter((path) => path !== "xl/worksheets/sheet2.xml"))
      expect(Buffer.compare(after.bytes(path)!, before.bytes(path)!)).toBe(0);
  });

  test("keeps the text of every formula", () => {
    const formulas = (xml: string): string[] =>
      [...xml.matchAll(/<f [^>]*\/>|<f[ >].*?<\/f>/gs)].map(([text]) =>
        text.replace(/ref="A4:[A-Z]+\d+"/, ""),
      );
    const before = handMadeParts(FOREIGN)["xl/worksheets/sheet2.xml"]!;
    expect(formulas(sheet(done.bytes, 2))).toEqual(formulas(before));
  });

  test("gets the values of its formulas", () => {
    const xml = sheet(done.bytes, 2);
    /** Standard deviation of 300, 310 and 350, by hand: the root of 1400 / 2. */
    expect(Number(/<v>(.*)<\/v>/.exec(cell(xml, "A1"))![1])).toBeCloseTo(Math.sqrt(700), 9);
    expect(cell(xml, "A1")).toContain('s="3"');
    expect(cell(xml, "B1")).toContain("<v>480</v>");
    expect(cell(xml, "A2")).toContain("<v>8</v>");
    expect(cell(xml, "A3")).toContain("<v>10</v>");
    expect(cell(xml, "A20")).toContain('t="str"><f>IF(B2&gt;3,"a &lt; b","")</f><v>a &lt; b</v>');
    expect(cell(xml, "D20")).toBe('<c r="D20"><f>1+1</f><v>2</v></c>');
  });

  test("keeps the value of what only a spreadsheet can work out, and counts on with it", () => {
    const xml = sheet(done.bytes, 2);
    expect(cell(xml, "B20")).toBe('<c r="B20"><f>LATER(1)</f><v>7</v></c>');
    expect(cell(xml, "C20")).toBe('<c r="C20"><f>B20+1</f><v>8</v></c>');
    expect(done.left).toEqual(["Sums!B20"]);
  });

  test("has the cells of a card where they belong, and none where an older one was", () => {
    const xml = sheet(done.bytes, 2);
    expect(cell(xml, "A4")).toMatch(
      /<c r="A4" cm="1" t="str"><f t="array" ref="A4:[O-Z]6">.*<v>Disc<\/v>/,
    );
    expect(cell(xml, "A5")).toContain("Mint fairway");
    expect(cell(xml, "A6")).toContain("Copper mid");
    expect(cell(xml, "B9")).toBe('<c r="B9" s="2"/>');
    const rows = [...xml.matchAll(/<row r="(\d+)"/g)].map(([, row]) => Number(row));
    expect(rows).toEqual([...rows].sort((a, b) => a - b));
  });

  test("worked out again it does not change", async () => {
    const again = await run(done.bytes);
    expect(again.changed).toBe(0);
    expect(again.bytes).toBe(done.bytes);
  });
});

test("elements may have a prefix, single quotes and no references", async () => {
  const rows =
    "<x:row><x:c t='n'><x:v>2</x:v></x:c><x:c><x:f>A1*3</x:f></x:c></x:row><x:row/><!-- <c/> -->";
  const parts = {
    "xl/worksheets/sheet1.xml": `<x:worksheet xmlns:x="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><x:sheetData>${rows}</x:sheetData></x:worksheet>`,
  };
  const { bytes } = await run(handMadeWorkbook({ sheets: { A: "" }, parts }));
  expect(sheet(bytes)).toContain("<x:c><x:f>A1*3</x:f><x:v>6</x:v></x:c></x:row><x:row/>");
});

test("columns and rows beyond the limits of a sheet cost nothing", async () => {
  const cols = '<cols><col min="1" max="999999999" width="9"/></cols>';
  const rows =
    '<row r="1"><c r="A1"><f>1+2</f></c></row><row r="99999999"><c r="A99999999"><v>1</v></c></row>';
  const { bytes } = await run(handMadeWorkbook({ sheets: { A: cols + data(rows) } }));
  expect(cell(sheet(bytes), "A1")).toContain("<v>3</v>");
});

test("a plain formula over several cells keeps the value that a spreadsheet gave it", async () => {
  const rows =
    '<row r="1"><c r="A1"><v>1</v></c></row><row r="2"><c r="A2"><v>2</v></c><c r="B2"><f>A1:A2*10</f><v>20</v></c></row><row r="3"><c r="B3"><v>5</v></c><c r="C3"><f>SUM(B1:B3)</f></c></row>';
  const { bytes, left } = await run(handMadeWorkbook({ sheets: { A: data(rows) } }));
  expect(left).toEqual(["A!B2"]);
  expect(cell(sheet(bytes), "B2")).toContain("<v>20</v>");
  expect(cell(sheet(bytes), "C3")).toContain("<v>25</v>");
});

test("a signed file is refused", async () => {
  const signed = handMadeWorkbook({
    sheets: { A: data('<row r="1"><c r="A1"><f>1</f></c></row>') },
    parts: { "_xmlsignatures/sig1.xml": "<Signature/>" },
  });
  await expect(run(signed)).rejects.toMatchObject({ fault: "invalid", message: /signature/ });
});
