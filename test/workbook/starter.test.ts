import { bundleInNode } from "../../src/page/bundleInNode";
import { type HeadlessWorkbook, openHeadless } from "../../src/page/headless";
import { starterBlueprint } from "../../src/workbook/blueprint";
import { expectCoreAnswer } from "./starter/againstCore";
import { callIn } from "./starter/argumentsIn";
import { coreAnswers } from "./starter/coreAnswers";

/** Every formula of the starter workbook, worked out by the built functions in the engine. */
let book: HeadlessWorkbook;

beforeAll(async () => {
  book = await openHeadless(starterBlueprint(), bundleInNode("dist"));
});
afterAll(() => book.close());

describe("the starter workbook", () => {
  it("calls every function", async () => {
    const formulas = await book.port.ourFormulas();
    const named = new Set(formulas.map(({ formula }) => callIn(formula).name));
    expect([...named].sort()).toEqual(Object.keys(coreAnswers).sort());
  });

  it.each(Object.keys(coreAnswers))("%s holds what the core answers", async (name) => {
    const formulas = await book.port.ourFormulas();
    const own = formulas.filter(({ formula }) => callIn(formula).name === name);
    expect(own.length).toBeGreaterThan(0);
    for (const cell of own) await expectCoreAnswer(book.port, cell);
  });
});
