import { bundleInNode } from "../../src/preview/bundleInNode";
import { openHeadless, type HeadlessWorkbook } from "../../src/preview/headless";
import { areaRef, quotedSheet, readSheetArea } from "../../src/workbook/a1";
import { starterBlueprint } from "../../src/workbook/blueprint";
import type { CellValue } from "../../src/workbook/port";
import { callIn, valueOf } from "./starter/argumentsIn";
import { coreAnswers } from "./starter/coreAnswers";

/**
 * Every formula of the starter workbook, worked out by the built functions in the engine, against the
 * direct call of the core on the cells that the formula names.
 */
let book: HeadlessWorkbook;

beforeAll(async () => {
  book = await openHeadless(starterBlueprint(), bundleInNode("dist"));
});
afterAll(() => book.close());

/** Both run the same arithmetic; nine significant digits leave room for a card that passed through cells. */
const near = (value: unknown): unknown =>
  typeof value === "number" && value !== 0
    ? expect.closeTo(value, 9 - Math.ceil(Math.log10(Math.abs(value))))
    : value;

/** An answer of several cells stands under a header; where nothing is to be told, a blank does. */
const NOTHING = [[""]];

async function shown(ref: string, answer: unknown[][]): Promise<CellValue[][]> {
  const expected = answer.length > 0 ? answer : NOTHING;
  const { sheet, area } = readSheetArea(ref)!;
  const columns = expected[0]!.length;
  const header = answer.length !== 1 || columns > 1 ? 1 : 0;
  const top = area.top + header;
  const bottom = top + expected.length - 1;
  const place = areaRef({ top, left: area.left, bottom, right: area.left + columns - 1 });
  return (await book.port.readRange(`${quotedSheet(sheet)}!${place}`))!;
}

const calls = async (): Promise<{ ref: string; name: string }[]> =>
  (await book.port.ourFormulas()).map(({ ref, formula }) => ({ ref, name: callIn(formula).name }));

describe("the starter workbook", () => {
  it("calls every function", async () => {
    const named = new Set((await calls()).map(({ name }) => name));
    expect([...named].sort()).toEqual(Object.keys(coreAnswers).sort());
  });

  it.each(Object.keys(coreAnswers))("%s holds what the core answers", async (name) => {
    const formulas = await book.port.ourFormulas();
    const own = formulas.filter(({ formula }) => callIn(formula).name === name);
    expect(own.length).toBeGreaterThan(0);
    for (const { ref, formula } of own) {
      const { sheet } = readSheetArea(ref)!;
      const given = await Promise.all(
        callIn(formula).arguments.map((text) => valueOf(book.port, sheet, text)),
      );
      const answer = coreAnswers[name]!(...given);
      const expected = answer.length > 0 ? answer : NOTHING;
      expect(await shown(ref, answer)).toEqual(expected.map((row) => row.map(near)));
    }
  });
});
