/** Set-up in Excel: what it makes, how many requests it takes, and what it leaves alone. */
import { emptyBlueprint, starterBlueprint } from "../../src/workbook/blueprint";
import type { TablePlan } from "../../src/workbook/blueprint/types";
import { HostError } from "./support/hostObject";
import { openExcel } from "./support/openExcel";

/** Excel on the web takes requests of up to 5 MB (resource limits of Office Add-ins). */
const REQUEST_LIMIT = 5_000_000;

const plan = starterBlueprint();
const sheetPlan = (name: string) => plan.sheets.find((sheet) => sheet.name === name)!;

describe("building the starter workbook", () => {
  const { host, port } = openExcel();
  const { book } = host;
  const sheet = (name: string) => book.sheet(name);

  beforeAll(async () => {
    const report = await port.build(plan);
    expect(report.kept).toEqual([]);
    expect(report.lacking).toBeUndefined();
  });
  afterAll(() => expect(host.unknown).toEqual([]));

  test("takes at most twelve requests, none of them too long", () => {
    expect(host.syncs).toBeLessThanOrEqual(12);
    expect(host.longest).toBeLessThan(REQUEST_LIMIT);
  });

  test("makes every sheet, in order, after those that were there", () =>
    expect(book.sheets.map(({ name }) => name)).toEqual([
      "Mine",
      ...plan.sheets.map(({ name }) => name),
    ]));

  test("makes every table with its starter rows", async () => {
    const tables = plan.sheets.flatMap(({ blocks }) =>
      blocks.filter((block): block is TablePlan => block.kind === "table"),
    );
    expect(tables.length).toBeGreaterThan(3);
    for (const { name, columns, rows } of tables) {
      const data = (await port.readTable(name))!;
      expect(data.headers).toEqual(columns.map(({ header }) => header));
      const typed = columns.map(({ formula }) => formula === undefined);
      rows.forEach((row, index) =>
        expect(data.rows[index]!.filter((_, at) => typed[at])).toEqual(
          row.filter((_, at) => typed[at]),
        ),
      );
    }
  });

  test("gives every name its cells", () => {
    const named = plan.sheets.flatMap((one) =>
      one.blocks.flatMap((block) =>
        block.kind !== "table" && block.name ? [[block.name, one.name, block.at] as const] : [],
      ),
    );
    expect(named.map(([name]) => name)).toEqual(
      expect.arrayContaining(["Settings", "Putting", "MyCard", "MyPlan"]),
    );
    for (const [name, sheetName, at] of named) {
      const start = at.replace(/^([A-Z]+)/, "$$$1$$");
      expect(book.names.get(name.toLowerCase())!.formula.startsWith(`=${sheetName}!${start}`)).toBe(
        true,
      );
    }
  });

  test("writes every formula of the blueprint", async () => {
    const planned = plan.sheets.flatMap(({ name, blocks }) =>
      blocks.flatMap((block) => (block.kind === "formula" ? [[`${name}!${block.at}`, block]] : [])),
    ) as [string, { formula: string }][];
    const ours = new Map((await port.ourFormulas()).map(({ ref, formula }) => [ref, formula]));
    for (const [ref, { formula }] of planned)
      if (formula.includes("CARRY.")) expect(ours.get(ref)).toBe(formula);
    expect(ours.size).toBeGreaterThan(15);
  });

  test("offers lists, shows bars, gives formats and widths", () => {
    const log = sheet("Log");
    expect(log.look("B6", "validation.rule")).toEqual({
      list: { inCellDropDown: true, source: '=INDIRECT("Bag[Disc]")' },
    });
    expect(log.look("B300", "validation.rule")).toBeDefined();
    expect(log.look("A6", "numberFormat")).toBe("yyyy-mm-dd");
    expect(log.look("A1", "format.font.size")).toBe(20);
    expect(sheet("Start").look("F27", "validation.errorAlert")).toMatchObject({ showAlert: true });
    expect(sheet("Holes").look("L6", "bar.upper")).toEqual({ type: "Number", formula: "1" });
    expect(log.look("B1", "format.columnWidth")).toBeGreaterThan(
      log.look("C1", "format.columnWidth") as number,
    );
  });

  test("freezes headers and sets up the print", () => {
    expect(sheet("Log").settings).toMatchObject({ frozen: "5 rows", titleRows: "$1:$5" });
    expect(sheet("Holes").settings).toMatchObject({
      ...{ frozen: "A1:A5", orientation: "Landscape", zoom: { horizontalFitToPages: 1 } },
    });
  });

  test("draws the ladder: a dot with its name for each disc, on a line between its ends", () => {
    const ladder = sheet("Card").charts.find(({ name }) => name === "Ladder")!;
    const planned = sheetPlan("Card").charts!.find(({ name }) => name === "Ladder")!.series;
    const plain = (ref: string): string => ref.replaceAll("$", "");
    expect(ladder.series).toHaveLength(2 * planned.length);
    planned.forEach(({ name, x, y, ends }, index) => {
      const [line, dot] = ladder.series.slice(2 * index);
      expect(line).toMatchObject({ x: plain(ends!.x), y: plain(ends!.y) });
      expect(dot).toMatchObject({ x: plain(x), y: plain(y) });
      expect(dot!.looks).toMatchObject({ "Label.Formula": name, marker: "Circle" });
    });
    expect(ladder.looks).toMatchObject({ "Legend.Visible": false });
  });

  test("draws the other charts as lines with a legend where there is more than one", () => {
    const coverage = sheet("Card").charts.find(({ name }) => name === "Coverage")!;
    expect(coverage.series.map(({ name }) => name)).toEqual(["Your bag", "A disc made for it"]);
    expect(coverage.looks).toMatchObject({ "Legend.Visible": true, "Y.NumberFormat": "0%" });
    expect(sheet("Start").charts[0]!.series).toHaveLength(1);
  });
});

describe("set-up on a workbook that is in use", () => {
  test("run twice, it leaves the player's own data as it is, byte for byte", async () => {
    const { host, port } = openExcel();
    host.type("Mine", 1, 1, "My own sheet");
    await port.build(emptyBlueprint());
    await port.addRows("Throws", [{ Disc: "Copper mid", Carry: 301 }]);
    host.type("Log", 60, 2, "a note far below");
    host.type("Card", 90, 3, "=1+1");
    host.type("Start", 12, 2, 288);
    const before = host.book.picture();
    const report = await port.build(emptyBlueprint());
    await port.build(starterBlueprint());
    expect(report.made).toEqual([]);
    expect(host.book.picture()).toBe(before);
    expect(host.unknown).toEqual([]);
  });

  test("a sheet of the player's with our name and other things is left alone, and it says so", async () => {
    const { host, port } = openExcel({ firstSheet: "Log" });
    for (const [row, value] of ["mine", 42, "=1+1"].entries()) host.type("Log", 6 + row, 2, value);
    const before = host.book.picture();
    await expect(port.build(emptyBlueprint())).rejects.toMatchObject({
      ...{ fault: "invalid", message: expect.stringMatching(/^Throws has no room on sheet Log/) },
    });
    expect(host.book.picture()).toBe(before);
  });

  test("a name or table of the player's in our words is kept, wherever it stands", async () => {
    const { host, port } = openExcel();
    host.book.addName("Settings", "=Mine!$A$1:$B$2");
    host.type("Mine", 1, 1, "Player");
    const report = await port.build(emptyBlueprint());
    expect(report.kept).toContain("Settings");
    expect(host.book.names.get("settings")!.formula).toBe("=Mine!$A$1:$B$2");
  });
});

describe("when Excel stops half-way through set-up", () => {
  const failing = ["Worksheet.Gridlines=", "TableCollection.Add", "NamedItemCollection.Add"];
  const later = ["Range.Formulas=", "DataValidation.Rule=", "ConditionalFormatCollection.Add"];

  test.each([...failing, ...later])("at %s, the workbook is as it was", async (action) => {
    const { host, port } = openExcel();
    host.type("Mine", 1, 1, "My own sheet");
    const before = host.book.picture();
    host.refuse = (name, count) =>
      name === action && count === 2 ? new HostError("GeneralException", "no") : null;
    await expect(port.build(plan)).rejects.toMatchObject({
      ...{ name: "PortError", fault: "failed", message: expect.stringMatching(/as it was\.$/) },
    });
    expect(host.book.picture()).toBe(before);
    host.refuse = () => null;
    expect((await port.build(plan)).made).toContain("Log");
    expect(host.unknown).toEqual([]);
  });

  test("a table that it makes on a sheet that was there goes again too", async () => {
    const { host, port } = openExcel({ firstSheet: "Discs" });
    const before = host.book.picture();
    host.refuse = (name) =>
      name === "Range.Formulas=" ? new HostError("GeneralException", "no") : null;
    await expect(port.build(plan)).rejects.toMatchObject({ fault: "failed" });
    expect(host.book.picture()).toBe(before);
  });

  test("a chart or a print set-up that Excel refuses is told, and the rest is made", async () => {
    const { host, port } = openExcel();
    host.refuse = (name) =>
      /^(ChartSeriesCollection\.Add|PageLayout\.Orientation=)$/.test(name)
        ? new HostError("GeneralException", "no")
        : null;
    const { made, lacking } = await port.build(plan);
    expect(made).toContain("Card");
    expect(lacking).toHaveLength(4);
    expect(lacking!.join(" ")).toMatch(/printer.*Flight.*|printer/);
    expect(host.book.sheet("Card").charts).toEqual([]);
  });

  test("a chart whose labels Excel refuses stays, and it is told", async () => {
    const { host, port } = openExcel();
    host.refuse = (name) =>
      name === "ChartDataLabel.Formula=" ? new HostError("GeneralException", "no") : null;
    const { lacking } = await port.build(plan);
    expect(lacking).toEqual([expect.stringContaining("names could not be written")]);
    expect(host.book.sheet("Card").charts.map(({ name }) => name)).toEqual(["Ladder", "Coverage"]);
  });

  test("a protected workbook is left alone, with the reason", async () => {
    const { host, port } = openExcel();
    host.book.isProtected = true;
    await expect(port.build(plan)).rejects.toMatchObject({
      ...{ fault: "protected", message: expect.stringContaining("Review") },
    });
    expect(host.book.sheets).toHaveLength(1);
  });
});
