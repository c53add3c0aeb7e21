/**
 * The plain copy of the starter workbook as LibreOffice reads it (where this machine has it): values,
 * lists and charts in place.
 */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { JSDOM } from "jsdom";
import { starterBlueprint } from "../../src/workbook/blueprint";
import { readBook } from "../../src/workbook/file/bookBytes";
import { FilePort } from "../../src/workbook/file/filePort";
import { hasLibreOffice, readByLibreOffice } from "../support/libreOffice";

jest.setTimeout(240_000);

const FILE = resolve(__dirname, "../../dist/carrybook-starter-plain.xlsx");

/** Repeated cells are stored once, with a count. */
const times = (element: Element, what: string): number =>
  Number(element.getAttribute(`table:number-${what}-repeated`) ?? 1);
const inside = (element: Element | Document, name: string): Element[] => [
  ...element.getElementsByTagName(name),
];

(hasLibreOffice() ? describe : describe.skip)("in LibreOffice", () => {
  let read: Document;
  let port: FilePort;
  beforeAll(async () => {
    const { DOMParser } = new JSDOM().window;
    read = new DOMParser().parseFromString(readByLibreOffice(FILE), "text/xml");
    port = new FilePort(await readBook(readFileSync(FILE)));
  });

  const cellsOf = (sheet: string, rows: number, columns: number): Element[][] => {
    const table = inside(read, "table:table").find(
      (each) => each.getAttribute("table:name") === sheet,
    )!;
    // A chart holds a table of its own, inside that of its sheet.
    const own = (row: Element): boolean =>
      !inside(table, "draw:object").some((chart) => chart.contains(row));
    return inside(table, "table:table-row")
      .filter(own)
      .flatMap((row) => Array<Element>(Math.min(rows, times(row, "rows"))).fill(row))
      .slice(0, rows)
      .map((row) =>
        [...row.children]
          .flatMap((cell) => Array<Element>(Math.min(columns, times(cell, "columns"))).fill(cell))
          .slice(0, columns),
      );
  };
  /** Days are counted from 30 December 1899, as spreadsheets do. */
  const dayOf = (date: string): number => (Date.parse(date) - Date.UTC(1899, 11, 30)) / 86_400_000;
  const shown = (cell: Element | undefined): unknown => {
    const date = cell?.getAttribute("office:date-value");
    if (date) return dayOf(date);
    const value = cell?.getAttribute("office:value");
    if (value !== undefined && value !== null) return Number(value);
    return cell
      ? inside(cell, "text:p")
          .map((p) => p.textContent)
          .join("\n")
      : "";
  };

  test.each(["MyCard", "MyPlan"])("%s holds its last values", async (name) => {
    const values = (await port.readRange(name))!.filter((row) => row[0] !== "");
    const sheet = name === "MyCard" ? "Card" : "Holes";
    expect(values.length).toBeGreaterThan(8);
    const cells = cellsOf(sheet, 60, 60).map((row) => row.map(shown));
    const [header] = values as [unknown[]];
    const top = cells.findIndex((row) => header.every((word) => row.includes(word)));
    const left = cells[top]!.findIndex((_, at) =>
      header.every((word, right) => cells[top]![at + right] === word),
    );
    const block = values.map((row, down) =>
      row.map((_, right) => cells[top + down]![left + right]),
    );
    expect(block).toEqual(
      values.map((row) =>
        row.map((value) => (typeof value === "number" ? expect.closeTo(value, 9) : value)),
      ),
    );
  });

  test("every list stands in its column", () => {
    const conditions = new Map(
      inside(read, "table:content-validation").map((rule) => [
        rule.getAttribute("table:name"),
        rule.getAttribute("table:condition")!,
      ]),
    );
    const listsOf = (sheet: string): string[] =>
      cellsOf(sheet, 12, 12)
        .flat()
        .map((cell) => cell.getAttribute("table:content-validation-name"))
        .flatMap((name) => (name ? [conditions.get(name)!] : []));
    expect(listsOf("Log").join()).toContain('"straight";"hyzer";"anhyzer";"off"');
    expect(listsOf("Log").join()).toContain("$Discs.");
    expect(listsOf("Discs").join()).toContain('"putter";"midrange";"fairway";"distance"');
    expect(listsOf("Rounds").join()).toContain("$Discs.");
  });

  test("every chart is there", () => {
    const planned = starterBlueprint().sheets.flatMap(({ charts }) => charts ?? []);
    expect(planned.length).toBeGreaterThan(0);
    expect(inside(read, "chart:chart")).toHaveLength(planned.length);
  });

  test("no cell shows an error", () => {
    const errors = inside(read, "text:p").filter(({ textContent }) =>
      /^(#|Err:)/.test(textContent ?? ""),
    );
    expect(errors.map(({ textContent }) => textContent)).toEqual([]);
  });
});
