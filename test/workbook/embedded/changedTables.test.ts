import "../../../src/page/iteratorSome";
import { RedoCommand, UndoCommand } from "@univerjs/core";
import { IDependencyManagerService } from "@univerjs/engine-formula";
import { SetRangeValuesCommand } from "@univerjs/sheets";
import { bundleInNode } from "../../../src/page/bundleInNode";
import { starterBlueprint } from "../../../src/workbook/blueprint";
import { EmbeddedWorkbook } from "../../../src/workbook/embedded";
import { openWorkbook, type OpenWorkbook } from "../../../src/workbook/embedded/open";
import { loadFunctions } from "../../support/customFunctions";
import { expectCoreAnswer } from "../starter/againstCore";

/**
 * The starter workbook while its tables grow and shrink between other changes: formulas show what the
 * core answers on the cells as they stand, and the engine complains of nothing.
 */
const bundle = { ...bundleInNode("dist"), functions: loadFunctions() };
const complaints = [jest.spyOn(console, "error"), jest.spyOn(console, "warn")];
let book: OpenWorkbook;
let port: EmbeddedWorkbook;

const settled = (): Promise<void> => book.calculation.settled();

beforeEach(async () => {
  complaints.forEach((said) => said.mockReset().mockImplementation(() => undefined));
  book = openWorkbook(starterBlueprint(), { bundle });
  port = new EmbeddedWorkbook(book.engine, book.calculation);
  await settled();
});
afterEach(() => {
  book.engine.univer.dispose();
  for (const said of complaints) expect(said).not.toHaveBeenCalled();
});
afterAll(() => complaints.forEach((said) => said.mockRestore()));

/** Types a row right below the table Course, cell by cell. */
async function typeHole(...cells: readonly number[]): Promise<void> {
  const { sheet, rows } = (await port.readTable("Course"))!;
  const subUnitId = book.engine.workbook.getSheetBySheetName(sheet)!.getSheetId();
  const row = 5 + rows.length;
  for (const [column, v] of cells.entries()) {
    const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
    const at = { unitId: book.engine.unitId, subUnitId, range };
    await book.engine.commands.executeCommand(SetRangeValuesCommand.id, { ...at, value: { v } });
    await settled();
  }
}

async function addThrow(carry: number): Promise<void> {
  await port.addRows("Throws", [{ Date: 46351, Disc: "Copper mid", Carry: carry }]);
  await settled();
}

async function addResult(finish: number): Promise<void> {
  const shot = { Distance: 250, Rise: 10, Headwind: 5, Disc: "Copper mid", Finish: finish };
  await port.addRows("Results", [{ Date: 46351, Hole: 4, ...shot }]);
  await settled();
}

async function removeFirstResult(): Promise<void> {
  const { headers, rows } = (await port.readTable("Results"))!;
  const was = Object.fromEntries(headers.map((header, at) => [header, rows[0]![at]!]));
  await port.removeRows("Results", [{ index: 0, was }]);
  await settled();
}

async function set(name: string, value: number): Promise<void> {
  const settings = (await port.readRange("Settings"))!;
  const changed = settings.map((row) => (row[0] === name ? [name, value] : row));
  await port.writeRange("Settings", changed);
  await settled();
}

async function press(command: { id: string }): Promise<void> {
  await book.engine.commands.executeCommand(command.id);
  await settled();
}

/** Expects what the core answers of every formula that calls one of these functions, or of all. */
async function expectTruth(...names: readonly string[]): Promise<void> {
  const isMeant = (formula: string): boolean =>
    names.length === 0 || names.some((name) => formula.includes(`CARRY.${name}(`));
  for (const cell of await port.ourFormulas())
    if (isMeant(cell.formula)) await expectCoreAnswer(port, cell);
}

/** How many results each learnt factor rests on. */
const learntRows = async (): Promise<number[]> =>
  (await port.readRange("Rounds!N6:N8"))!.map(([rows]) => Number(rows));

describe("formulas over tables that change", () => {
  it("follow a typed hole, a result after it, and the settings after that", async () => {
    const before = await learntRows();
    await typeHole(19, 3, 280);
    await addResult(-15);
    await set("Uphill factor", 1.09);
    await set("Headwind factor", 0.58);
    expect(await learntRows()).toEqual(before.map((rows) => rows + 1));
    expect((await port.readRange("MyPlan"))!.map(([hole]) => hole)).toContain(19);
    await expectTruth();
  });

  it("follow tables that grow and shrink again and again, back and forth", async () => {
    await set("Headwind factor", 0.9);
    await addThrow(240);
    await set("Headwind factor", 0.8);
    await removeFirstResult();
    await addThrow(250);
    await set("Headwind factor", 0.7);
    await expectTruth("CARD", "LEARN");
    for (const command of [UndoCommand, UndoCommand, UndoCommand, RedoCommand, UndoCommand]) {
      await press(command);
      await expectTruth("CARD", "LEARN");
    }
  });

  it("are calculated anew on demand", async () => {
    await set("Headwind factor", 0.9);
    await addThrow(240);
    await port.recalculate();
    await expectTruth("CARD");
  });

  it("leave nothing behind in the engine, however many edits there were", async () => {
    const known = book.engine.injector.get(IDependencyManagerService);
    const range = { startRow: 0, startColumn: 0, endRow: 999, endColumn: 99 };
    const everywhere = book.engine.workbook
      .getSheets()
      .map((sheet) => ({ unitId: book.engine.unitId, sheetId: sheet.getSheetId(), range }));
    const formulas = (): number => known.searchDependency(everywhere).size;
    await set("Headwind factor", 0.9);
    const before = formulas();
    for (const carry of [240, 250, 245]) {
      await addThrow(carry);
      await set("Headwind factor", carry / 300);
    }
    expect(formulas()).toBe(before);
  });
});
