/** What goes wrong in Excel: each ends in a sentence, and in an unchanged or a completed workbook. */
import { contractBlueprint } from "../workbook/contractBlueprint";
import { HostError } from "./support/hostObject";
import { EXCEL_2021 } from "./support/library";
import { openExcel } from "./support/openExcel";

const THROW = { Date: 46003, Disc: "Mint fairway", Carry: 344 };

async function opened(options = {}) {
  const excel = openExcel(options);
  await excel.port.build(contractBlueprint);
  excel.host.syncs = 0;
  return excel;
}

const general = (): HostError => new HostError("GeneralException", "There was an internal error.");
const once = (action: string, at = 0) => {
  let armed = true;
  return (name: string, count: number): HostError | null => {
    if (!armed || name !== action || count !== at) return null;
    armed = false;
    return general();
  };
};

describe("requests", () => {
  test("adding a throw takes two, changing and removing too, reading one", async () => {
    const { host, port } = await opened();
    const cost = async (work: () => Promise<unknown>): Promise<number> => {
      host.syncs = 0;
      await work();
      return host.syncs;
    };
    expect(await cost(() => port.addRows("Throws", [THROW]))).toBe(2);
    expect(await cost(() => port.addRows("Throws", Array(40).fill(THROW)))).toBe(2);
    expect(
      await cost(() =>
        port.changeRows("Throws", [{ index: 0, was: { Carry: 301 }, becomes: { Carry: 302 } }]),
      ),
    ).toBe(2);
    expect(await cost(() => port.removeRows("Throws", [{ index: 0, was: {} }]))).toBe(2);
    expect(await cost(() => port.readTable("Throws"))).toBe(1);
    expect(await cost(() => port.readRange("Limits"))).toBe(1);
    expect(host.unknown).toEqual([]);
  });

  test("calculation and drawing wait while it writes", async () => {
    const { host, port } = await opened();
    let written: string[] = [];
    host.refuse = () => {
      if (host.done.some((name) => name === "Range.Values=")) written = host.done;
      return null;
    };
    await port.addRows("Throws", [THROW]);
    expect(written).toEqual(
      expect.arrayContaining([
        "Application.SuspendApiCalculationUntilNextSync",
        "Application.SuspendScreenUpdatingUntilNextSync",
      ]),
    );
  });
});

describe("the host", () => {
  test("limited to Excel 2021 is enough for everything", async () => {
    const { host, port } = await opened({ sets: EXCEL_2021 });
    await port.addRows("Throws", [THROW, THROW, THROW]);
    await port.removeRows("Throws", [{ index: 0, was: {} }]);
    await port.replaceSheet({ name: "Discs", blocks: [] });
    await port.repairFormulas();
    await port.recalculate();
    expect(host.book.calculations).toEqual(["Full"]);
    expect(host.unknown).toEqual([]);
  });

  test("older than that says so and writes nothing", async () => {
    const { host, port } = openExcel({ sets: { ...EXCEL_2021, ExcelApi: "1.7" } });
    const before = host.book.picture();
    await expect(port.build(contractBlueprint)).rejects.toMatchObject({
      ...{ fault: "unsupported", message: expect.stringContaining("too old") },
    });
    expect(host.book.picture()).toBe(before);
  });

  test("groups a repair into one step of undo where it can, and only there", async () => {
    for (const [version, grouped] of [
      ["1.14", undefined],
      ["1.20", true],
    ] as const) {
      const { host, port } = await opened({ sets: { ...EXCEL_2021, ExcelApi: version } });
      const run = jest.spyOn(host.library.Excel, "run");
      await port.repairFormulas();
      const [options] = run.mock.calls[0] as unknown as [Excel.RunOptions];
      expect(options).toMatchObject({ delayForCellEdit: true });
      expect(options.mergeUndoGroup).toBe(grouped);
    }
  });
});

describe("a cell in edit mode", () => {
  test("puts the work off until the player has left it", async () => {
    const { host, port } = await opened();
    const leave = host.edit();
    const adding = port.addRows("Throws", [THROW]);
    await new Promise((resolve) => setTimeout(resolve, 20));
    expect(host.syncs).toBe(0);
    leave();
    expect(await adding).toEqual([3]);
  });

  test("is told where the host cannot wait", async () => {
    const sets = { ...EXCEL_2021 } as Record<string, string>;
    delete sets["DelayForCellEdit"];
    const { host, port } = await opened({ sets });
    const before = host.book.picture();
    const leave = host.edit();
    await expect(port.addRows("Throws", [THROW])).rejects.toMatchObject({
      ...{ fault: "busy", message: expect.stringContaining("Press Enter") },
    });
    leave();
    expect(host.book.picture()).toBe(before);
  });
});

describe("a protected sheet", () => {
  test("refuses every change of rows and ranges, and stays as it was", async () => {
    const { host, port } = await opened();
    host.book.sheet("Log").isProtected = true;
    const before = host.book.picture();
    const changes = [
      () => port.addRows("Throws", [THROW, THROW, THROW]),
      () => port.changeRows("Throws", [{ index: 0, was: {}, becomes: { Carry: 9 } }]),
      () => port.removeRows("Throws", [{ index: 0, was: {} }]),
      () => port.writeRange("Log!A1", [["x"]]),
    ];
    for (const change of changes)
      await expect(change()).rejects.toMatchObject({
        ...{ fault: "protected", message: expect.stringContaining("protected") },
      });
    expect(host.book.picture()).toBe(before);
    expect((await port.readTable("Throws"))!.rows).toHaveLength(5);
  });
});

describe("a table that the player has worked over", () => {
  test("with its columns moved, and ours among others, takes rows as before", async () => {
    const { host, port } = await opened();
    const { sheet, area } = host.book.findTable("Throws")!;
    for (let row = area.top; row <= area.bottom; row++) {
      const [disc, carry] = [sheet.at(row, 2), sheet.at(row, 3)];
      sheet.put(row, 2, carry ?? null);
      sheet.put(row, 3, disc ?? null);
    }
    const [index] = await port.addRows("Throws", [THROW]);
    const data = (await port.readTable("Throws"))!;
    expect(data.headers.slice(1, 3)).toEqual(["Carry", "Disc"]);
    expect(data.rows[index!]!.slice(0, 3)).toEqual([46003, 344, "Mint fairway"]);
  });

  test("under another name is missing, by name", async () => {
    const { host, port } = await opened();
    host.book.findTable("Throws")!.name = "MyThrows";
    expect(await port.readTable("Throws")).toBeNull();
    await expect(port.addRows("Throws", [THROW])).rejects.toMatchObject({
      ...{ fault: "missing", message: "There is no table Throws." },
    });
  });

  test("without one of our columns says which, and writes nothing", async () => {
    const { host, port } = await opened();
    host.type("Log", 3, 3, "Metres");
    const before = host.book.picture();
    await expect(port.addRows("Throws", [THROW])).rejects.toMatchObject({
      ...{ fault: "missing", message: "Table Throws has no column Carry." },
    });
    expect(host.book.picture()).toBe(before);
  });

  test("with something under it does not grow over it", async () => {
    const { host, port } = await opened();
    host.type("Log", 9, 2, "mine");
    const before = host.book.picture();
    await expect(port.addRows("Throws", [THROW, THROW, THROW])).rejects.toMatchObject({
      ...{ fault: "invalid", message: expect.stringContaining("something under table Throws") },
    });
    expect(host.book.picture()).toBe(before);
  });
});

describe("an error in mid-batch", () => {
  test.each([
    ["Range.Values=", 1],
    ["Range.CopyFrom", 0],
    ["Range.CopyFrom", 1],
    ["Table.Resize", 0],
  ])("of adding rows, at %s %i, leaves them out altogether", async (action, at) => {
    const { host, port } = await opened();
    const before = await everything(port);
    host.refuse = once(action, at);
    await expect(port.addRows("Throws", [THROW, THROW, THROW])).rejects.toMatchObject({
      ...{ fault: "failed", message: expect.stringMatching(/as it was\.$/) },
    });
    expect(await everything(port)).toEqual(before);
  });

  test("of changing rows brings the first ones back", async () => {
    const { host, port } = await opened();
    const before = await everything(port);
    host.refuse = once("Range.Values=", 1);
    await expect(
      port.changeRows("Throws", [
        { index: 0, was: {}, becomes: { Carry: 1, Disc: "1/2" } },
        { index: 1, was: {}, becomes: { Carry: 2 } },
      ]),
    ).rejects.toMatchObject({ fault: "failed" });
    expect(await everything(port)).toEqual(before);
  });

  test("of removing rows brings the first ones back", async () => {
    const { host, port } = await opened();
    const before = await everything(port);
    host.refuse = once("TableRow.Delete", 1);
    await expect(
      port.removeRows("Throws", [
        { index: 0, was: {} },
        { index: 1, was: {} },
        { index: 2, was: {} },
      ]),
    ).rejects.toMatchObject({ fault: "failed" });
    expect(await everything(port)).toEqual(before);
  });

  test("of emptying a table brings all back", async () => {
    const { host, port } = await opened();
    const before = await everything(port);
    host.refuse = once("Range.Clear", 1);
    await expect(
      port.removeRows("Bag", [
        { index: 0, was: {} },
        { index: 1, was: {} },
      ]),
    ).rejects.toMatchObject({ fault: "failed" });
    expect(await everything(port)).toEqual(before);
  });

  test.each(["WorksheetCollection.Add", "Range.Values=", "NamedItemCollection.Add"])(
    "of replacing a sheet, at %s, leaves the old one",
    async (action) => {
      const { host, port } = await opened();
      const before = host.book.picture();
      host.refuse = once(action);
      await expect(
        port.replaceSheet({
          name: "Discs",
          blocks: [{ kind: "cells", at: "B2", values: [["New", 7]], name: "Limits" }],
        }),
      ).rejects.toMatchObject({ fault: "failed" });
      expect(host.book.picture()).toBe(before);
    },
  );

  test("that cannot be taken back is not passed over in silence", async () => {
    const { host, port } = await opened();
    let failed = false;
    host.refuse = (name, count) => {
      failed ||= name === "Range.Values=" && count === 1;
      return failed ? general() : null;
    };
    await expect(
      port.changeRows("Throws", [
        { index: 0, was: {}, becomes: { Carry: 1 } },
        { index: 1, was: {}, becomes: { Carry: 2 } },
      ]),
    ).rejects.toMatchObject({ message: expect.stringContaining("half-way") });
  });
});

/** Values of the tables, and where they stand. */
async function everything(port: Awaited<ReturnType<typeof opened>>["port"]): Promise<unknown> {
  return [
    await port.readTable("Throws"),
    await port.readTable("Bag"),
    await port.readRange("Log!A1:F14"),
  ];
}
