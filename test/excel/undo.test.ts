/**
 * What of the pane's writes Excel's own Undo takes back: which of the calls made for each are among
 * those that Excel cannot take back.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { emptyBlueprint } from "../../src/workbook/blueprint";
import { contractBlueprint } from "../workbook/contractBlueprint";
import { openExcel } from "./support/openExcel";

/**
 * Calls without undo in Excel for Windows and Mac, or on the web, for the classes that we use. Every
 * other call of these can be taken back; one of these empties the list of Undo up to itself.
 * Source: learn.microsoft.com/office/dev/add-ins/excel/excel-add-ins-undo-capabilities, as of
 * 2025-05-15 (table "Unsupported APIs").
 */
const WITHOUT_UNDO = [
  ...["Chart.categoryLabelLevel", "Chart.seriesNameLevel", "NamedItem.comment"],
  ...["Workbook.close", "Workbook.insertWorksheetsFromBase64", "Workbook.save"],
  ...["WorkbookProtection.protect", "WorkbookProtection.unprotect"],
  ...["Worksheet.copy", "Worksheet.delete", "Worksheet.name", "Worksheet.standardWidth"],
  ...["Worksheet.position", "Worksheet.visibility", "WorksheetCollection.addFromBase64"],
  ...["WorksheetProtection.protect", "WorksheetProtection.unprotect"],
];

const DEVELOPERS = readFileSync(join(__dirname, "../../DEVELOPERS.md"), "utf8");

type Opened = ReturnType<typeof openExcel>;
const row = { index: 0, was: {} };

const WORKS: readonly [method: string, work: (port: Opened["port"]) => Promise<unknown>][] = [
  ["addRows", (port) => port.addRows("Throws", Array(4).fill({ Disc: "Mint fairway" }))],
  ["changeRows", (port) => port.changeRows("Throws", [{ ...row, becomes: { Carry: 2 } }])],
  ["removeRows", (port) => port.removeRows("Throws", [row])],
  ["writeRange", (port) => port.writeRange("Log!A1", [["x"]])],
  ["repairFormulas", (port) => port.repairFormulas()],
  ["build", (port) => port.build(emptyBlueprint())],
  ["replaceSheet", (port) => port.replaceSheet({ name: "Discs", blocks: [] })],
];

test.each(WORKS)(
  "%s makes the calls without undo that DEVELOPERS.md tells of",
  async (name, work) => {
    const { host, port } = openExcel();
    if (name !== "build") await port.build(contractBlueprint);
    host.book.sheet(host.book.sheets.at(-1)!.name).put(50, 1, {
      ...{ value: 0, kind: "Double", formula: "=CARRY.AIR()" },
    });
    const called = new Set<string>();
    host.refuse = (action) => {
      called.add(action.replace("=", "").toLowerCase());
      return null;
    };
    await work(port);
    expect(called.size).toBeGreaterThan(0);
    const without = WITHOUT_UNDO.filter((call) => called.has(call.toLowerCase()));
    const told = DEVELOPERS.split("\n").find((line) => line.startsWith(`| \`${name}\``))!;
    const toldCalls = [...told.matchAll(/`(Worksheet\w*\.\w+|NamedItem\.\w+)`/g)].map(
      ([, call]) => call,
    );
    expect(toldCalls.sort()).toEqual([...without].sort());
  },
);
