/** What is amiss in a workbook is told in a sentence, and formulas that Excel met without us are repaired. */
import { emptyBlueprint } from "../../src/workbook/blueprint";
import { contractBlueprint } from "../workbook/contractBlueprint";
import { EXCEL_2021 } from "./support/library";
import { openExcel } from "./support/openExcel";

const THROW = { Date: 46003, Disc: "Mint fairway", Carry: 344 };

async function opened() {
  const excel = openExcel({ sets: EXCEL_2021 });
  await excel.port.build(emptyBlueprint());
  Object.assign(excel.host, { syncs: 0, longest: 0 });
  return excel;
}

async function withRows() {
  const excel = openExcel({ sets: EXCEL_2021 });
  await excel.port.build(contractBlueprint);
  return excel;
}

/** Every formula of ours turns into what Excel shows where it met it without the add-in. */
function forgetFunctions({ host }: Awaited<ReturnType<typeof opened>>): void {
  for (const { cells } of host.book.sheets)
    for (const [key, { formula = "", ...cell }] of cells)
      if (formula.includes("CARRY."))
        cells.set(key, { ...cell, formula, kind: "Error", value: "#NAME?" });
}

const shown = ({ host }: Awaited<ReturnType<typeof opened>>): number =>
  host.book.sheets.flatMap(({ cells }) =>
    [...cells.values()].filter(({ value }) => value === "#NAME?"),
  ).length;

describe("formulas that Excel met without us", () => {
  test("are noticed by a few cells, in two requests", async () => {
    const excel = await opened();
    expect(await excel.port.health(emptyBlueprint())).toEqual({ unanswered: false, remarks: [] });
    expect(excel.host.syncs).toBe(2);
    forgetFunctions(excel);
    expect(await excel.port.health(emptyBlueprint())).toMatchObject({ unanswered: true });
    expect(excel.host.longest).toBeLessThan(50_000);
    expect(excel.host.unknown).toEqual([]);
  });

  test("are not seen in #NAME? of the player's own, nor in text that looks so", async () => {
    const { host, port } = await opened();
    const log = host.book.sheet("Card");
    log.put(5, 1, { value: "#NAME?", kind: "Error", formula: "=MINE()" });
    log.put(1, 17, { value: "#NAME?", kind: "String" });
    expect(await port.health(emptyBlueprint())).toMatchObject({ unanswered: false });
  });

  test("are asked for in a workbook without our sheets as well", async () => {
    const { port } = openExcel();
    expect(await port.health(emptyBlueprint())).toEqual({ unanswered: false, remarks: [] });
  });

  test("are written again by Recalculate before it calculates, and no others", async () => {
    const excel = await opened();
    forgetFunctions(excel);
    const { host, port } = excel;
    const order: string[] = [];
    host.refuse = (action) => {
      if (action === "Range.Formulas=" || action === "Application.Calculate") order.push(action);
      return null;
    };
    await port.recalculate();
    expect(shown(excel)).toBe(0);
    expect(order.length).toBeGreaterThan(5);
    expect(order.indexOf("Application.Calculate")).toBe(order.length - 1);
    order.length = 0;
    await port.recalculate();
    expect(order).toEqual(["Application.Calculate"]);
  });

  test("on a protected sheet are left as they are, and the sheet is named", async () => {
    const excel = await opened();
    forgetFunctions(excel);
    const { host, port } = excel;
    const card = host.book.sheet("Card");
    card.isProtected = true;
    const before = new Map(card.cells);
    await expect(port.repairFormulas()).rejects.toMatchObject({
      ...{ fault: "protected", message: expect.stringMatching(/Card.*#NAME\?.*Review/) },
    });
    expect(card.cells).toEqual(before);
    expect(shown(excel)).toBe([...before.values()].filter((c) => c.value === "#NAME?").length);
  });
});

test("a protected sheet does not keep Recalculate from calculating the rest", async () => {
  const excel = await opened();
  forgetFunctions(excel);
  excel.host.book.sheet("Card").isProtected = true;
  await expect(excel.port.recalculate()).rejects.toThrow(/Card.*protected/);
  expect(excel.host.book.calculations).toEqual(["Full"]);
});

describe("a sentence is said", () => {
  test("of manual calculation", async () => {
    const { host, port } = await opened();
    host.book.calculationMode = "Manual";
    const { remarks } = await port.health(emptyBlueprint());
    expect(remarks).toEqual([expect.stringMatching(/Manual.*Recalculate/)]);
  });

  test("of a workbook that is open to read only, before and when something is written", async () => {
    const { host, port } = await withRows();
    host.book.isReadOnly = true;
    const before = host.book.picture();
    const { remarks } = await port.health(contractBlueprint);
    expect(remarks).toEqual([expect.stringMatching(/read only.*Save a copy/)]);
    await expect(port.addRows("Throws", [THROW])).rejects.toMatchObject({
      ...{ fault: "protected", message: expect.stringContaining("read only") },
    });
    await expect(port.build(emptyBlueprint())).rejects.toThrow(/read only/);
    expect(host.book.picture()).toBe(before);
  });

  test("of a table under another name, known by its columns", async () => {
    const { host, port } = await withRows();
    host.book.findTable("Throws")!.name = "MyThrows";
    const { remarks } = await port.health(contractBlueprint);
    expect(remarks).toEqual([expect.stringMatching(/Throws.*MyThrows.*Table Design/)]);
  });

  test("of a table that is simply not there, nothing", async () => {
    const { host, port } = await withRows();
    host.book.tables.splice(0, 1);
    expect((await port.health(contractBlueprint)).remarks).toEqual([]);
  });
});

describe("a filtered table", () => {
  test("takes no rows and loses none, says why, and stays as it was", async () => {
    const { host, port } = await withRows();
    host.book.findTable("Throws")!.isFiltered = true;
    const before = host.book.picture();
    const changes = [
      () => port.addRows("Throws", [THROW]),
      () => port.removeRows("Throws", [{ index: 0, was: {} }]),
    ];
    for (const change of changes)
      await expect(change()).rejects.toMatchObject({
        ...{ fault: "invalid", message: expect.stringMatching(/Throws is filtered.*Clear/) },
      });
    expect(host.book.picture()).toBe(before);
  });

  test("still has its rows changed", async () => {
    const { host, port } = await withRows();
    host.book.findTable("Throws")!.isFiltered = true;
    await port.changeRows("Throws", [{ index: 0, was: { Carry: 301 }, becomes: { Carry: 305 } }]);
    expect((await port.readTable("Throws"))!.rows[0]![2]).toBe(305);
  });
});

describe("a table with a total row", () => {
  async function withTotals() {
    const excel = await withRows();
    const table = excel.host.book.findTable("Throws")!;
    table.area = { ...table.area, bottom: table.area.bottom + 1 };
    table.hasTotals = true;
    table.sheet.put(table.area.bottom, 3, { value: 836.5, kind: "Double" });
    return excel;
  }

  test("does not grow, says why, and keeps its total", async () => {
    const { host, port } = await withTotals();
    const before = host.book.picture();
    await expect(port.addRows("Throws", [THROW, THROW, THROW])).rejects.toMatchObject({
      ...{ fault: "invalid", message: expect.stringMatching(/total row.*Table Design/) },
    });
    expect(host.book.picture()).toBe(before);
  });

  test("has its blank rows filled, and its total is no throw", async () => {
    const { port } = await withTotals();
    expect(await port.addRows("Throws", [THROW])).toEqual([3]);
    expect((await port.readTable("Throws"))!.rows).toHaveLength(5);
  });
});

describe("a cell being edited", () => {
  const seconds = (count: number): Promise<void> =>
    new Promise((resolve) => setTimeout(resolve, count * 1_000));

  test("is told of after a second, what was to be written is written after, and told off", async () => {
    const { host, port } = await withRows();
    const told: boolean[] = [];
    const stop = port.onWaiting((waiting) => told.push(waiting));
    const leave = host.edit();
    const adding = port.addRows("Throws", [THROW]);
    await seconds(1.2);
    expect(told).toEqual([true]);
    leave();
    expect(await adding).toEqual([3]);
    expect(told).toEqual([true, false]);
    expect(host.unknown).toEqual([]);
    stop();
  });

  test("is not blamed for an Excel that is only slow", async () => {
    const { host, port } = await withRows();
    const told: boolean[] = [];
    const stop = port.onWaiting((waiting) => told.push(waiting));
    const { answer } = host;
    host.answer = async (body, flags) => {
      if (flags !== 0) await seconds(1.3);
      return answer.call(host, body, flags);
    };
    await port.readTable("Throws");
    expect(told).toEqual([]);
    stop();
  });
});
