/**
 * The self-test that the pane shows in Excel, here over the real client library and an Excel in memory
 * whose formulas of ours are worked out by the functions as they are built.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { reportOf, SelfTest } from "../../src/addin/selfTest/run";
import { bundleInNode } from "../../src/page/bundleInNode";
import { selfTestManifest } from "../../src/tools/excel";
import { functionExamples } from "../../src/tools/functionExamples";
import type { WorkbookPort } from "../../src/workbook/port";
import { callIn, valueOf } from "../workbook/starter/argumentsIn";
import type { ExcelHost } from "./support/excelHost";
import { openExcel } from "./support/openExcel";
import { areaOf, RangeObject } from "./support/rangeObject";
import { readSheetArea } from "../../src/workbook/a1";

const DIST = join(__dirname, "../../dist");
const { functions, metadata } = bundleInNode(DIST);
const PATIENCE = { forMs: 200, everyMs: 20 };

/** Reads the host's workbook without asking the host. */
function reader({ book }: ExcelHost): WorkbookPort {
  return {
    readTable: async (name: string) => {
      const { sheet, area } = book.findTable(name)!;
      const [headers = [], ...rows] = new RangeObject(sheet, area).Values;
      return { name, sheet: sheet.name, headers, rows };
    },
    readRange: async (ref: string) => {
      const place = readSheetArea(book.names.get(ref.toLowerCase())?.formula.slice(1) ?? ref)!;
      return new RangeObject(book.sheet(place.sheet), place.area ?? areaOf(ref)).Values;
    },
  } as unknown as WorkbookPort;
}

/** What a function throws, Excel shows as an error in the cell. */
function orError(ask: () => unknown): unknown {
  try {
    return ask();
  } catch (error) {
    return { error };
  }
}

type Answering = (name: string, answer: unknown) => unknown;

/** Works out what stands on the sheet of the self-test after every request, and Card's first cell. */
function calculating(host: ExcelHost, answering: Answering = (_, answer) => answer): void {
  const answer = host.answer.bind(host);
  host.answer = async (body, flags) => {
    const response = await answer(body, flags);
    const sheet = host.book.findSheet("Self-test");
    const card = host.book.findSheet("Card")?.cells;
    const corner = card?.get("5,1");
    if (corner) card!.set("5,1", { ...corner, value: "Disc", kind: "String" });
    for (const [at, { formula = "", value }] of sheet?.cells ?? []) {
      if (!formula.includes("CARRY.") || value !== 0) continue;
      const call = callIn(formula);
      const given = await Promise.all(
        call.arguments.map((text) => valueOf(reader(host), "Self-test", text)),
      );
      const { parameters } = metadata.find(({ id }) => id === call.name)!;
      const args = parameters.map((_, index) => given[index] ?? null);
      const raw = answering(
        call.name,
        orError(() => functions.get(call.name)!(...args)),
      );
      const first = Array.isArray(raw) ? (raw as unknown[][])[0]![0] : raw;
      const isError = typeof first === "object";
      const kind = isError ? "Error" : typeof first === "number" ? "Double" : "String";
      sheet!.cells.set(at, { formula, kind, value: isError ? "#VALUE!" : (first as string) });
    }
    return response;
  };
}

test("passes over a workbook in memory: every function answers, and the log is as it was", async () => {
  const { host, port } = openExcel();
  calculating(host);
  const checks = await new SelfTest(port, functionExamples(), () => {}, PATIENCE).run();
  const report = reportOf(checks);
  expect(checks.filter(({ ok }) => ok === false)).toEqual([]);
  expect(report).toMatch(/^All passed\n/);
  expect(host.unknown).toEqual([]);
});

test("asks every function that Excel is told of", () => {
  const asked = functionExamples().map((formula) => callIn(formula).name);
  expect(asked.sort()).toEqual(metadata.map(({ id }) => id).sort());
});

test("tells of a function that answers wrongly, one that fails, and an Excel that says nothing", async () => {
  const { host, port } = openExcel();
  calculating(host, (name, answer) =>
    name === "LEVEL" ? 301 : name === "RISE" ? { error: true } : answer,
  );
  jest.spyOn(port, "onChange").mockImplementation(() => () => {});
  const checks = await new SelfTest(port, functionExamples(), () => {}, PATIENCE).run();
  const failed = checks.filter(({ ok }) => ok === false).map(({ what }) => what);
  expect(failed).toEqual([
    "=CARRY.RISE(301,4)",
    "A line of sight of 301 at 4° is 301 × cos 4°",
    "Add a throw, hear of it, and take it back",
  ]);
  expect(reportOf(checks)).toMatch(/^3 of \d+ failed\n/);
});

test("does nothing in a workbook with tables of ours", async () => {
  const { host, port } = openExcel();
  const sheet = host.book.sheet("Mine");
  host.book.addTable(sheet, { top: 1, left: 1, bottom: 3, right: 2 }).name = "Throws";
  const before = host.book.picture();
  const checks = await new SelfTest(port, functionExamples(), () => {}, PATIENCE).run();
  expect(checks).toEqual([
    { what: "A new workbook", ok: false, seen: expect.stringMatching(/Throws.*new, empty/) },
  ]);
  expect(host.book.picture()).toBe(before);
});

test("has a manifest of its own in which every address of the page is the self-test's", () => {
  const manifest = readFileSync(join(__dirname, "../../manifest.xml"), "utf8");
  const own = selfTestManifest(manifest);
  expect(manifest.match(/addin\.html/g)!.length).toBeGreaterThan(1);
  expect(own).not.toContain("addin.html");
  expect(own.replaceAll("self-test.html", "addin.html")).toBe(manifest);
  expect(readFileSync(join(DIST, "self-test.html"), "utf8")).toMatch(
    /functions\.js.*selfTest\.js/s,
  );
});
