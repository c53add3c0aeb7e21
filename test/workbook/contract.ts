/**
 * What every adapter of the port must do, whatever workbook stands behind it. An adapter's test
 * calls `portContract` with a way to open a workbook that holds no sheet of ours yet.
 */
import type { Blueprint } from "../../src/workbook/blueprint/types";
import type { Row, WorkbookPort } from "../../src/workbook/port";
import { bagPlan, contractBlueprint, logPlan } from "./contractBlueprint";

export interface OpenedWorkbook {
  readonly port: WorkbookPort;
  /** Resolves when the workbook has calculated; at once where it never does. */
  calculated(): Promise<void>;
  /** The host's own undo, where the port says that it is undoable and the test can press it. */
  undo?(): Promise<unknown>;
  close(): void | Promise<void>;
}

export interface Capabilities {
  /** Whether formulas get values. */
  readonly calculates: boolean;
}

const THROW: Row = { Date: 46003, Disc: "Mint fairway", Carry: 344 };
const fault = (name: string): object => expect.objectContaining({ name: "PortError", fault: name });

export function portContract(
  adapter: string,
  open: () => Promise<OpenedWorkbook>,
  { calculates }: Capabilities,
): void {
  describe(`port contract: ${adapter}`, () => {
    let book: OpenedWorkbook;
    let port: WorkbookPort;

    const fresh = async (blueprint: Blueprint = contractBlueprint): Promise<void> => {
      book = await open();
      port = book.port;
      await port.build(blueprint);
      await book.calculated();
    };
    const rowsOf = async (table: string): Promise<unknown[][]> =>
      ((await port.readTable(table))?.rows ?? []).map((row) => [...row]);
    const column = async (table: string, header: string): Promise<unknown[]> => {
      const data = (await port.readTable(table))!;
      const at = data.headers.indexOf(header);
      return data.rows.map((row) => row[at]);
    };

    beforeEach(() => fresh());
    afterEach(() => book.close());

    describe("reading", () => {
      it("tells sheets and tables by name", async () => {
        expect(await port.sheetNames()).toEqual(expect.arrayContaining(["Log", "Discs"]));
        expect((await port.tableNames()).sort()).toEqual(["Bag", "Throws"]);
      });

      it("reads a table in any case, blank rows in their place", async () => {
        const data = (await port.readTable("tHROWS"))!;
        expect(data).toMatchObject({ name: "Throws", sheet: "Log" });
        expect(data.headers).toEqual(["Date", "Disc", "Carry", "Long name", "Double"]);
        expect(data.rows).toHaveLength(5);
        expect(data.rows.map((row) => row.slice(0, 4))).toEqual([
          [46000, "Copper mid", 301, "first"],
          [46001, "Slate putter", 248, ""],
          [46002, "Copper mid", 287.5, "third"],
          ["", "", "", ""],
          ["", "", "", ""],
        ]);
      });

      it("knows no other table and no other range", async () => {
        expect(await port.readTable("Nothing")).toBeNull();
        expect(await port.readRange("Nothing")).toBeNull();
        expect(await port.readRange("Nowhere!A1")).toBeNull();
      });

      it("reads a range and a defined name, with kinds kept", async () => {
        const limits = [
          ["Longest", 350],
          ["Ready", true],
          ["Blank", ""],
        ];
        expect(await port.readRange("Discs!D1:E3")).toEqual(limits);
        expect(await port.readRange("limits")).toEqual(limits);
        expect(await port.readRange("Log!A1")).toEqual([["Log of throws"]]);
      });

      (calculates ? it : it.skip)("reads what formulas give", async () => {
        expect((await column("Throws", "Double")).slice(0, 3)).toEqual([602, 496, 575]);
        expect(await port.readRange("Twice")).toEqual([[700]]);
      });
    });

    describe("adding rows", () => {
      it("fills blank rows first, then makes the table longer", async () => {
        expect(await port.addRows("throws", [THROW, THROW, { disc: "Slate putter" }])).toEqual([
          3, 4, 5,
        ]);
        await book.calculated();
        const rows = await rowsOf("Throws");
        expect(rows).toHaveLength(6);
        expect(rows[4]!.slice(0, 4)).toEqual([46003, "Mint fairway", 344, ""]);
        expect(rows[5]!.slice(0, 4)).toEqual(["", "Slate putter", "", ""]);
        if (calculates) expect(rows[4]![4]).toBe(688);
      });

      it("carries column formulas into new rows", async () => {
        await port.addRows("Bag", [{ Disc: "Mint fairway" }]);
        await port.addRows("Throws", [THROW, THROW, THROW]);
        await book.calculated();
        if (calculates) expect((await rowsOf("Throws"))[5]![4]).toBe(688);
        expect(await column("Bag", "Disc")).toEqual(["Copper mid", "Slate putter", "Mint fairway"]);
      });

      it("takes text that looks like a formula as text", async () => {
        const [index] = await port.addRows("Bag", [{ Disc: "=1+1", "In bag": "'+x" }]);
        await book.calculated();
        expect((await rowsOf("Bag"))[index!]).toEqual(["=1+1", "'+x"]);
      });

      it("adds nothing when one row cannot be stored", async () => {
        const before = await rowsOf("Bag");
        await expect(port.addRows("Bag", [{ Disc: "A" }, { Colour: "red" }])).rejects.toEqual(
          fault("missing"),
        );
        await expect(port.addRows("Throws", [THROW, { Carry: Infinity }])).rejects.toEqual(
          fault("invalid"),
        );
        await expect(port.addRows("Nothing", [THROW])).rejects.toEqual(fault("missing"));
        expect(await rowsOf("Bag")).toEqual(before);
        expect((await rowsOf("Throws")).filter((row) => row[1] !== "")).toHaveLength(3);
      });
    });

    describe("changing rows", () => {
      it("changes the named columns of rows that still hold what was read", async () => {
        await port.changeRows("Throws", [
          { index: 0, was: { Disc: "Copper mid", Carry: 301 }, becomes: { carry: 305 } },
          { index: 2, was: { "Long name": "third" }, becomes: { "Long name": "" } },
        ]);
        const rows = await rowsOf("Throws");
        expect(rows[0]!.slice(0, 4)).toEqual([46000, "Copper mid", 305, "first"]);
        expect(rows[2]!.slice(0, 4)).toEqual([46002, "Copper mid", 287.5, ""]);
      });

      it("changes none when one row has changed meanwhile", async () => {
        const before = await rowsOf("Throws");
        await expect(
          port.changeRows("Throws", [
            { index: 0, was: { Carry: 301 }, becomes: { Carry: 1 } },
            { index: 1, was: { Carry: 999 }, becomes: { Carry: 2 } },
          ]),
        ).rejects.toEqual(fault("changed"));
        await expect(
          port.changeRows("Throws", [{ index: 40, was: {}, becomes: { Carry: 2 } }]),
        ).rejects.toEqual(fault("changed"));
        expect(await rowsOf("Throws")).toEqual(before);
      });
    });

    describe("removing rows", () => {
      it("moves the rows below up", async () => {
        await port.removeRows("Throws", [
          { index: 0, was: { Carry: 301 } },
          { index: 3, was: { Carry: "" } },
        ]);
        await book.calculated();
        const rows = await rowsOf("Throws");
        expect(rows.map((row) => row.slice(0, 4))).toEqual([
          [46001, "Slate putter", 248, ""],
          [46002, "Copper mid", 287.5, "third"],
          ["", "", "", ""],
        ]);
        if (calculates) expect(rows[1]![4]).toBe(575);
        expect(await port.readRange("Log!A7:C8")).toEqual([
          ["", "", ""],
          ["", "", ""],
        ]);
      });

      it("removes none when one row has changed meanwhile", async () => {
        const before = await rowsOf("Throws");
        await expect(
          port.removeRows("Throws", [
            { index: 0, was: { Carry: 301 } },
            { index: 1, was: { Carry: 1 } },
          ]),
        ).rejects.toEqual(fault("changed"));
        expect(await rowsOf("Throws")).toEqual(before);
      });

      it("keeps one blank row of a table that loses all", async () => {
        await port.removeRows("Bag", [
          { index: 0, was: { Disc: "Copper mid" } },
          { index: 1, was: { Disc: "Slate putter" } },
        ]);
        expect(await rowsOf("Bag")).toEqual([["", ""]]);
        expect(await port.addRows("Bag", [{ Disc: "Sand approach" }])).toEqual([0]);
      });
    });

    describe("writing a range", () => {
      it("writes values of every kind", async () => {
        await port.writeRange("Limits", [
          ["Longest", 410],
          ["Ready", false],
          ["=A1", ""],
        ]);
        expect(await port.readRange("Discs!D1:E3")).toEqual([
          ["Longest", 410],
          ["Ready", false],
          ["=A1", ""],
        ]);
      });

      it("refuses another shape, and a place that is not there", async () => {
        await expect(port.writeRange("Limits", [["Longest", 1]])).rejects.toEqual(fault("invalid"));
        await expect(port.writeRange("Nowhere!A1", [[1]])).rejects.toEqual(fault("missing"));
        expect((await port.readRange("Limits"))![0]).toEqual(["Longest", 350]);
      });
    });

    describe("building", () => {
      it("makes nothing twice", async () => {
        const report = await port.build(contractBlueprint);
        expect(report.made).toEqual([]);
        expect([...report.kept].sort()).toEqual([
          ...["Bag", "Discs", "Limits", "Log", "Throws", "Twice"],
        ]);
        expect((await port.sheetNames()).filter((name) => name === "Log")).toHaveLength(1);
      });

      it("leaves the player's own content as it is", async () => {
        await port.addRows("Throws", [THROW]);
        await port.writeRange("Log!A1", [["My own title"]]);
        await book.calculated();
        const before = await port.readRange("Log!A1:E9");
        await port.build(contractBlueprint);
        await book.calculated();
        expect(await port.readRange("Log!A1:E9")).toEqual(before);
      });

      it("makes the missing sheet, and tells what it made", async () => {
        await book.close();
        await fresh({ sheets: [logPlan] });
        expect(await port.tableNames()).toEqual(["Throws"]);
        const report = await port.build(contractBlueprint);
        expect([...report.made].sort()).toEqual(["Bag", "Discs", "Limits", "Twice"]);
        expect([...report.kept].sort()).toEqual(["Log", "Throws"]);
        expect((await port.readRange("Limits"))![0]).toEqual(["Longest", 350]);
      });
    });

    it("replaces the whole content of a sheet", async () => {
      await port.writeRange("Discs!J9", [["stray"]]);
      await port.replaceSheet({
        ...bagPlan,
        blocks: [{ kind: "cells", at: "B2", values: [["New", 7]], name: "Limits" }],
      });
      await book.calculated();
      expect(await port.tableNames()).toEqual(["Throws"]);
      expect(await port.readRange("Limits")).toEqual([["New", 7]]);
      expect(await port.readRange("Discs!J9")).toEqual([[""]]);
      expect((await port.sheetNames()).filter((name) => name === "Discs")).toHaveLength(1);
    });

    it("finds our formulas and writes them back", async () => {
      const found = [{ ref: "Discs!G1", formula: "=CARRY.TWICE(Discs!$E$1)" }];
      expect(await port.ourFormulas()).toEqual(found);
      const steps: number[][] = [];
      expect(await port.repairFormulas((done, total) => steps.push([done, total]))).toBe(1);
      await book.calculated();
      expect(steps.at(-1)).toEqual([1, 1]);
      expect(await port.ourFormulas()).toEqual(found);
      if (calculates) expect(await port.readRange("Twice")).toEqual([[700]]);
    });

    it("tells of changes, until it is stopped", async () => {
      let heard = 0;
      const changed = new Promise<void>((resolve) => {
        const stop = port.onChange(() => {
          heard += 1;
          stop();
          resolve();
        });
      });
      await port.writeRange("Discs!J9", [[1]]);
      await port.writeRange("Discs!J9", [[2]]);
      await changed;
      await port.writeRange("Discs!J9", [[3]]);
      await book.calculated();
      expect(heard).toBe(1);
    });

    it("shows a cell, or says that there is none", async () => {
      await expect(port.show("Log!B4")).resolves.toBeUndefined();
      await expect(port.show("Nowhere!B4")).rejects.toEqual(fault("missing"));
    });

    it("takes each call back in one step of the host's undo", async () => {
      if (!book.undo) return expect(port.undoable).toBe(false);
      const before = [await rowsOf("Throws"), await rowsOf("Bag"), await port.sheetNames()];
      const calls: (() => Promise<unknown>)[] = [
        () => port.addRows("Throws", [THROW, THROW, THROW]),
        () => port.changeRows("Throws", [{ index: 0, was: {}, becomes: { Carry: 9, Disc: "x" } }]),
        () => port.removeRows("Throws", [{ index: 1, was: {} }]),
        () =>
          port.writeRange(
            "Limits",
            [...Array(3)].map(() => ["x", 1]),
          ),
        () => port.replaceSheet({ name: "Discs", blocks: [] }),
        () => port.build({ sheets: [{ name: "Extra", blocks: [] }] }),
      ];
      for (const call of calls) {
        await call();
        await book.calculated();
        await book.undo();
        await book.calculated();
        expect([await rowsOf("Throws"), await rowsOf("Bag"), await port.sheetNames()]).toEqual(
          before,
        );
      }
      expect((await port.readRange("Limits"))![0]).toEqual(["Longest", 350]);
    });
  });
}
