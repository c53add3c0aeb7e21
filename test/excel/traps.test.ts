/**
 * What Excel is known to trip over, as rules on the workbook and the build that we make. Where a
 * rule comes from is said in DEVELOPERS.md.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { emptyBlueprint, starterBlueprint } from "../../src/workbook/blueprint";
import { blockArea } from "../../src/workbook/blueprint/parts";
import { readSheetArea, readSpot } from "../../src/workbook/a1";

const DIST = join(__dirname, "../../dist");
const plan = starterBlueprint();

interface Formula {
  readonly sheet: string;
  readonly at: string;
  readonly name: string | undefined;
  readonly text: string;
}

const formulas: Formula[] = plan.sheets.flatMap(({ name: sheet, blocks }) =>
  blocks.flatMap((block) =>
    block.kind === "formula"
      ? [{ sheet, at: block.at, name: block.name, text: block.formula }]
      : [],
  ),
);
const ours = formulas.filter(({ text }) => text.includes("CARRY."));
const withoutWords = (text: string): string => text.replace(/"[^"]*"/g, '""');

test("functions of ours feed each other over at most two levels: each costs half a second", () => {
  const feeds = (from: Formula, to: Formula): boolean => {
    const text = withoutWords(to.text);
    if (from.name !== undefined && new RegExp(`\\b${from.name}\\b`).test(text)) return true;
    const { row, column } = readSpot(from.at)!;
    return [...text.matchAll(/(?:(\w+)!)?(\$?[A-Z]{1,2}\$?\d+)/g)].some(([, sheet, ref]) => {
      const spot = readSpot(ref!)!;
      return (sheet ?? to.sheet) === from.sheet && spot.row === row && spot.column === column;
    });
  };
  const level = (formula: Formula): number =>
    1 + Math.max(0, ...ours.filter((from) => feeds(from, formula)).map(level));
  const levels = ours.map(level);
  expect(Math.max(...levels)).toBe(2);
});

test("there are tens of them, not hundreds, as each is a message", () =>
  expect(ours.length).toBeLessThan(60));

test("no column of a table calls one, as nothing spills in a table", () => {
  for (const { blocks } of plan.sheets)
    for (const block of blocks)
      if (block.kind === "table")
        for (const { formula = "" } of block.columns) expect(formula).not.toContain("CARRY.");
});

test("a table goes in with its headers", () => {
  const tables = /\b(?:Throws|Bag|Course|Results)\[(\[?)([^\],]*)/g;
  const parts = ours.flatMap(({ text }) => {
    const calls = withoutWords(text).slice(text.indexOf("CARRY."));
    return [...calls.matchAll(tables)].map(([, , first]) => first);
  });
  expect(parts.length).toBeGreaterThanOrEqual(6);
  expect(new Set(parts)).toEqual(new Set(["#All"]));
});

test("no formula takes whole columns or rows", () => {
  for (const { text } of formulas)
    expect(withoutWords(text)).not.toMatch(/\$?\b[A-Z]{1,3}:\$?[A-Z]{1,3}\b|\b\d+:\d+\b/);
});

test("no formula is worked out anew at every touch", () => {
  for (const { text } of formulas)
    expect(text).not.toMatch(/\b(NOW|TODAY|RAND\w*|OFFSET|INDIRECT)\(/);
});

test("a formula that spills finds its place free, in the starter workbook and the empty one", () => {
  for (const { sheets } of [plan, emptyBlueprint()])
    for (const { blocks } of sheets) {
      const typed = new Set<string>();
      for (const block of blocks) {
        if (block.kind === "formula") continue;
        const { top, left, bottom, right } = blockArea(block);
        for (let row = top; row <= bottom; row++)
          for (let column = left; column <= right; column++) typed.add(`${row},${column}`);
      }
      for (const block of blocks) {
        if (block.kind !== "formula") continue;
        const { top, left, bottom, right } = blockArea(block);
        for (let row = top; row <= bottom; row++)
          for (let column = left; column <= right; column++)
            expect([block.at, typed.has(`${row},${column}`)]).toEqual([block.at, false]);
      }
    }
});

test("charts point to cells that are there", () => {
  const series = plan.sheets.flatMap(({ charts = [] }) => charts.flatMap((chart) => chart.series));
  const names = new Set(plan.sheets.map(({ name }) => name));
  expect(series.length).toBeGreaterThan(2);
  for (const { x, y, ends } of series)
    for (const ref of [x, y, ...(ends ? [ends.x, ends.y] : [])])
      expect(names.has(readSheetArea(ref)?.sheet ?? "")).toBe(true);
});

describe("the build", () => {
  const metadata = JSON.parse(readFileSync(join(DIST, "functions.json"), "utf8")) as {
    allowErrorForDataTypeAny?: boolean;
    functions: { id: string; name: string; options?: Record<string, boolean> }[];
  };

  test("lets error cells in, or one of them would keep a whole range from us", () =>
    expect(metadata.allowErrorForDataTypeAny).toBe(true));

  test("has no function that is volatile, streaming or cancelable", () => {
    for (const { id, options = {} } of metadata.functions)
      expect([id, options["volatile"], options["stream"], options["cancelable"]]).toEqual([
        ...[id, undefined, undefined, undefined],
      ]);
  });

  test("does not bundle Office's library; the page takes it from its maker", () => {
    expect(readFileSync(join(DIST, "addin.js"), "utf8")).not.toContain("ClientRequestContext");
    expect(readFileSync(join(DIST, "addin.html"), "utf8")).toMatch(
      /<script src="?https:\/\/appsforoffice\.microsoft\.com\/lib\/1\/hosted\/office\.js/,
    );
  });

  test("registers the functions before the pane starts", () => {
    const page = readFileSync(join(DIST, "addin.html"), "utf8");
    const places = ["office.js", "functions.js", "addin.js"].map((name) => page.indexOf(name));
    expect(places).toEqual([...places].sort((a, b) => a - b));
    expect(places).not.toContain(-1);
  });
});
