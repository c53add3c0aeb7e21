/** Every part of every file that we write, against the rules of the format and of Excel. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { strToU8, unzipSync, zipSync } from "fflate";
import { fileOf } from "../../src/workbook/file/writeBook";
import { writeValues } from "../../src/workbook/package/writeValues";
import { WorkbookPackage } from "../../src/workbook/package/workbookPackage";
import type { WholeBook, WholeSheet } from "../../src/workbook/wholeBook";
import { FileParts, RULES } from "../support/fileRules";

const inDist = (name: string): Uint8Array =>
  readFileSync(resolve(__dirname, "../../dist", `${name}.xlsx`));

const plain: Omit<WholeSheet, "name" | "cells"> = {
  hidden: false,
  columns: new Map(),
  rows: new Map(),
  frozenRows: 0,
  frozenColumns: 0,
  gridLines: true,
  tables: [],
  merged: [],
  rules: [],
  bars: [],
  charts: [],
};

/** A workbook as players make them: newer functions, odd headers, names and signs. */
const odd: WholeBook = {
  sheets: [
    {
      ...plain,
      name: "It's <mine> & yours",
      cells: new Map([
        [1, [undefined, { value: 2026 }, { value: "Two\nlines" }, { value: "" }, { value: "A" }]],
        [2, [undefined, { value: "a" }, { value: 1, formula: "=Odd[[#This Row],[2026]]&1" }]],
        [3, [undefined, { value: Infinity }, { value: { error: "#SPILL!" } }, { value: true }]],
        [5, [undefined, { value: 3, formula: "=LET(x,1,SUM(x,LAMBDA(y,y+x)(1)))" }]],
        [6, [undefined, { value: 1, formula: "=STDEV.S(SORT(B1:B3))+MAXIFS(B1:B3,B1:B3,1)" }]],
        [7, [undefined, { value: 1, formula: "=SUM(B6#)+@B1:B3+CARRY.AIR(Share)" }]],
        [8, [undefined, { value: 1, formula: "=SEQUENCE(1)" }, { value: " \u0001 _x0041_ " }]],
      ]),
      tables: [
        {
          name: "Odd",
          area: { top: 1, left: 1, bottom: 3, right: 4 },
          headers: ["2026", "Two\nlines", "", "A"],
        },
      ],
      rules: [
        {
          areas: [{ top: 2, left: 1, bottom: 3, right: 1 }],
          type: "list",
          first: "=Odd[A]",
          allowsBlank: true,
          refuses: true,
        },
      ],
    },
    { ...plain, name: "Empty", cells: new Map(), frozenRows: 2 },
  ],
  names: [
    { name: "Share", refersTo: "=XLOOKUP(1,'It''s <mine> & yours'!$A$1:$A$3,{1;2;3})" },
    { name: "Here", refersTo: "='It''s <mine> & yours'!$A$1", sheet: "Empty" },
  ],
};

/** Values written into a file in place, as the phone page and `npm run workbook` do. */
function changedInPlace(bytes: Uint8Array): Uint8Array {
  const book = WorkbookPackage.read(bytes);
  const [sheet] = book.sheets();
  const values = [
    { row: 12, column: 2, value: 311 },
    { row: 70, column: 30, value: "a note & more" },
    { row: 71, column: 1, value: { error: "#CALC!" } },
  ];
  return book.replacing(new Map([[sheet!.path, writeValues(book.xml(sheet!.path), values)]]));
}

const FILES: readonly (readonly [string, () => Uint8Array])[] = [
  ["the starter", () => inDist("carrybook-starter")],
  ["its plain copy", () => inDist("carrybook-starter-plain")],
  ["a workbook of a player", () => fileOf(odd)],
  ["a file changed in place", () => changedInPlace(inDist("carrybook-starter"))],
];

describe.each(FILES)("%s", (_, make) => {
  const file = new FileParts(make());
  test.each(RULES)("$says ($source)", ({ broken }) => {
    const found = broken(file).map((each) =>
      typeof each === "object" && each !== null && "outerHTML" in each
        ? String(each.outerHTML).slice(0, 300)
        : each,
    );
    expect(found).toEqual([]);
  });
});

/** Each rule finds the fault that it is for, so that none passes whatever a file holds. */
describe("a fault is found", () => {
  /** The rule by its words, and whether the starter with a change breaks it. */
  const isBroken = (says: RegExp, change: (path: string, text: string) => string): boolean => {
    const files = Object.entries(unzipSync(inDist("carrybook-starter"))).map(
      ([path, content]) =>
        [path, strToU8(change(path, new TextDecoder().decode(content)))] as const,
    );
    const [rule] = RULES.filter((each) => says.test(each.says));
    return rule!.broken(new FileParts(zipSync(Object.fromEntries(files)))).length > 0;
  };
  const replacing =
    (path: RegExp, from: RegExp | string, to: string) =>
    (at: string, text: string): string =>
      path.test(at) ? text.replace(from, to) : text;

  test.each([
    ["a pane without a split", /sheet2\.xml$/, ' ySplit="5"', "", /split/],
    ["an older engine", /workbook\.xml$/, "191029", "171027", /older/],
    ["a bare new function", /sheet4\.xml$/, "_xlfn._xlws.FILTER", "FILTER", /its prefix/],
    ["one prefix of two", /sheet4\.xml$/, "_xlfn._xlws.FILTER", "_xlfn.FILTER", /both/],
    ["a single cell of ours", /sheet1\.xml$/, / cm="1"><f t="array" ref="B17">/, "><f>", /dynamic/],
    ["a short spelling", /table\d\.xml$/, "[[#This Row],[Hole]]", "[@Hole]", /sign/],
    ["an unknown column", /table\d\.xml$/, "[Hole]]", "[Whole]]", /columns that are there/],
    ["a label without a word", /chart2\.xml$/, /<c:showPercent val="0"\/>/, "", /six/],
    ["a header that differs", /table1\.xml$/, 'name="Disc"', 'name="Discs"', /headers/],
    ["a name twice", /workbook\.xml$/, 'name="MyPlan"', 'name="MyCard"', /tables and cells/],
    [
      "a list from a table",
      /sheet\d\.xml$/,
      /<formula1>OFFSET[^<]*/,
      "<formula1>Bag[Disc]",
      /lists/,
    ],
    ["a look too many", /sheet1\.xml$/, ' s="1"', ' s="999"', /rows and cells/],
    ["a missing part", /workbook\.xml\.rels$/, "styles.xml", "style.xml", /relation/],
    ["parts out of order", /sheet2\.xml$/, /(<dimension[^>]*>)(.*<\/sheetViews>)/, "$2$1", /order/],
    [
      "a sheet's long name",
      /workbook\.xml$/,
      'name="Start"',
      `name="${"S".repeat(32)}"`,
      /sheets are/,
    ],
    ["no metadata", /metadata\.xml$/, 'fDynamic="1"', "", /metadata/],
    ["a look without its font", /styles\.xml$/, /fontId="[1-9]\d*"/, 'fontId="99"', /fonts/],
    ["XML that ends early", /sheet3\.xml$/, "</worksheet>", "", /well-formed/],
  ] as const)("%s", (_, path, from, to, says) => {
    expect(isBroken(says, replacing(path, from, to))).toBe(true);
  });

  it("a name of LET without its prefix", () => {
    const change = replacing(/sheet4\.xml$/, /<f>[^<]*<\/f>/, "<f>_xlfn.LET(x,1,x)</f>");
    expect(isBroken(/LET/, change)).toBe(true);
  });
});
