import "../../../src/page/iteratorSome";
import {
  CellValueType,
  ICommandService,
  RedoCommand,
  UndoCommand,
  type ICellData,
} from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { SetRangeValuesCommand } from "@univerjs/sheets";
import { EmbeddedWorkbook } from "../../../src/workbook/embedded";
import { openWorkbook, type OpenWorkbook } from "../../../src/workbook/embedded/open";
import { contractBlueprint } from "../contractBlueprint";
import { twiceBundle } from "./twiceBundle";

let book: OpenWorkbook;
let port: EmbeddedWorkbook;

beforeEach(async () => {
  book = openWorkbook(contractBlueprint, { bundle: twiceBundle });
  port = new EmbeddedWorkbook(book.engine, book.calculation);
  await book.calculation.settled();
});
afterEach(() => book.engine.univer.dispose());

const settled = (): Promise<void> => book.calculation.settled();
const press = (command: { id: string }): Promise<boolean> =>
  book.engine.injector.get(ICommandService).executeCommand(command.id);

/** What the cell editor does when Enter is pressed. */
async function type(sheet: string, row: number, column: number, value: ICellData): Promise<void> {
  const subUnitId = book.engine.workbook.getSheetBySheetName(sheet)!.getSheetId();
  const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
  await book.engine.commands.executeCommand(SetRangeValuesCommand.id, {
    unitId: book.engine.unitId,
    subUnitId,
    range,
    value,
  });
  await settled();
}
const number = (v: number): ICellData => ({ v, t: CellValueType.NUMBER });
const text = (v: string): ICellData => ({ v, t: CellValueType.STRING });
const formula = (f: string): ICellData => ({ f, v: null });
const cell = async (ref: string): Promise<unknown> => (await port.readRange(ref))![0]![0];

describe("typing right below a table", () => {
  it("makes the table longer, with its formula, and formulas elsewhere follow", async () => {
    await type("Log", 20, 6, formula("=SUM(Throws[Carry])"));
    await type("Log", 20, 7, formula("=ROWS(Throws[#All])"));
    await type("Log", 8, 2, number(400));
    const { rows } = (await port.readTable("Throws"))!;
    expect(rows).toHaveLength(6);
    expect(rows[5]).toEqual(["", "", 400, "", 800]);
    expect(await cell("Log!G21")).toBe(301 + 248 + 287.5 + 400);
    expect(await cell("Log!H21")).toBe(7);
  });

  it("is one step with the typing, back and forth", async () => {
    await type("Log", 8, 2, number(400));
    await press(UndoCommand);
    await settled();
    expect((await port.readTable("Throws"))!.rows).toHaveLength(5);
    expect(await port.readRange("Log!A9:E9")).toEqual([["", "", "", "", ""]]);
    await press(RedoCommand);
    await settled();
    expect((await port.readTable("Throws"))!.rows[5]).toEqual(["", "", 400, "", 800]);
  });

  it("takes lists and number formats along", async () => {
    await type("Log", 8, 0, number(46005));
    const { engine } = book;
    const sheet = engine.workbook.getSheetBySheetName("Log")!;
    const pattern = (row: number): string | undefined =>
      engine.workbook.getStyles().getStyleByCell(sheet.getCellMatrix().getValue(row, 0))?.n
        ?.pattern;
    expect(pattern(8)).toBe("yyyy-mm-dd");
  });

  it("does nothing beside or two rows below", async () => {
    await type("Log", 8, 5, number(1));
    await type("Log", 10, 2, number(1));
    expect((await port.readTable("Throws"))!.rows).toHaveLength(5);
  });
});

describe("typed formulas", () => {
  it("knows the short forms inside a table", async () => {
    await type("Log", 3, 3, formula("=[@carry]+1"));
    expect(await cell("Log!D4")).toBe(302);
  });

  it("are read right after one that was left unfinished", async () => {
    const reader = book.engine.injector.get(LexerTreeBuilder);
    reader.getFunctionAndParameter("=SUM(1,Throws[A", 13);
    await type("Discs", 9, 0, formula("=SUM(311,2)"));
    expect(await cell("Discs!A10")).toBe(313);
  });

  it("follows a spill by A1#, however long it is", async () => {
    await type("Discs", 9, 0, number(3));
    await type("Discs", 10, 0, formula("=SEQUENCE(A10)"));
    await type("Discs", 10, 3, formula("=SUM(A11#)"));
    expect(await cell("Discs!D11")).toBe(6);
    await type("Discs", 9, 0, number(4));
    expect(await cell("Discs!D11")).toBe(10);
  });

  it("says #REF! for A1# where nothing spills", async () => {
    await type("Discs", 9, 0, text("plain"));
    await type("Discs", 9, 1, formula("=SUM(A10#)"));
    expect(await cell("Discs!B10")).toEqual({ error: "#REF!" });
  });
});

describe("errors of our functions", () => {
  it("come with their sentence, until they are mended", async () => {
    await type("Discs", 9, 0, formula("=CARRY.TWICE(D1)"));
    expect(await cell("Discs!A10")).toEqual({
      error: "#VALUE!",
      message: "value must be a number.",
    });
    await type("Discs", 0, 3, number(4));
    expect(await cell("Discs!A10")).toBe(8);
  });
});
