/** Formulas of the starter workbook against the direct call of the core on the cells that they name. */
import { areaRef, quotedSheet, readSheetArea } from "../../../src/workbook/a1";
import type { CellValue, FormulaCell, WorkbookPort } from "../../../src/workbook/port";
import { callIn, valueOf } from "./argumentsIn";
import { coreAnswers } from "./coreAnswers";

/** Both run the same arithmetic; nine significant digits leave room for a card that passed through cells. */
const near = (value: unknown): unknown =>
  typeof value === "number" && value !== 0
    ? expect.closeTo(value, 9 - Math.ceil(Math.log10(Math.abs(value))))
    : value;

/** An answer of several cells stands under a header; where nothing is to be told, a blank does. */
const NOTHING = [[""]];

async function shown(port: WorkbookPort, ref: string, answer: unknown[][]): Promise<CellValue[][]> {
  const expected = answer.length > 0 ? answer : NOTHING;
  const { sheet, area } = readSheetArea(ref)!;
  const columns = expected[0]!.length;
  const header = answer.length !== 1 || columns > 1 ? 1 : 0;
  const top = area.top + header;
  const bottom = top + expected.length - 1;
  const place = areaRef({ top, left: area.left, bottom, right: area.left + columns - 1 });
  return (await port.readRange(`${quotedSheet(sheet)}!${place}`))!;
}

/** Expects a formula to show what the core answers. */
export async function expectCoreAnswer(
  port: WorkbookPort,
  { ref, formula }: FormulaCell,
): Promise<void> {
  const { sheet } = readSheetArea(ref)!;
  const call = callIn(formula);
  const given = await Promise.all(call.arguments.map((text) => valueOf(port, sheet, text)));
  const answer = coreAnswers[call.name]!(...given);
  const expected = answer.length > 0 ? answer : NOTHING;
  const cells = await shown(port, ref, answer);
  expect({ ref, cells }).toEqual({ ref, cells: expected.map((row) => row.map(near)) });
}
