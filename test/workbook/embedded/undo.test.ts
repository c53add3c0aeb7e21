/** Whatever was done can be undone, and redone: at both ends stands the same workbook as before. */
import { IDefinedNamesService } from "@univerjs/engine-formula";
import { RemoveSheetCommand } from "@univerjs/sheets";
import { bundleInNode } from "../../../src/page/bundleInNode";
import { starterBlueprint } from "../../../src/workbook/blueprint";
import { loadFunctions } from "../../support/customFunctions";
import { BookInHand } from "./bookInHand";

const bundle = { ...bundleInNode("dist"), functions: loadFunctions() };
let book: BookInHand;
beforeEach(async () => {
  book = await BookInHand.open(starterBlueprint(), bundle);
});
afterEach(() => book.close());

/** All that a player would miss: sheets in order, cells and their formulas, tables, names. */
async function whole(): Promise<object> {
  await book.settled();
  const { engine } = book.opened;
  const names = engine.injector.get(IDefinedNamesService).getDefinedNameMap(engine.unitId) ?? {};
  const tables = await Promise.all(
    (await book.port.tableNames()).map((t) => book.port.readTable(t)),
  );
  return {
    sheets: await book.port.sheetNames(),
    shown: book.shown(),
    formulas: (await book.port.ourFormulas()).sort((a, b) => a.ref.localeCompare(b.ref)),
    tables: tables.sort((a, b) => a!.name.localeCompare(b!.name)),
    names: Object.values(names)
      .map(({ name, formulaOrRefString }) => `${name} ${formulaOrRefString}`)
      .sort(),
  };
}

const remove = (name: string): Promise<boolean> =>
  book.run(RemoveSheetCommand.id, {
    unitId: book.opened.engine.unitId,
    subUnitId: book.sheet(name).getSheetId(),
  });

it("undoes and redoes the deleting of every sheet", async () => {
  const before = await whole();
  for (const name of await book.port.sheetNames()) {
    expect({ name, is: await remove(name) }).toEqual({ name, is: true });
    const without = await whole();
    expect(await book.port.sheetNames()).not.toContain(name);
    await book.undo();
    expect({ undone: name, ...(await whole()) }).toEqual({ undone: name, ...before });
    await book.redo();
    expect({ redone: name, ...(await whole()) }).toEqual({ redone: name, ...without });
    await book.undo();
    await book.settled();
  }
});

it("undoes 120 steps to the beginning and redoes them to the end", async () => {
  const before = await whole();
  for (let step = 0; step < 117; step++) await book.typeAt("Log", 5 + (step % 40), 2, 200 + step);
  await book.port.addRows("Throws", [{ Disc: "Copper mid", Carry: 290 }]);
  await remove("Card");
  await book.typeAt("Start", 60, 3, "after all");
  const after = await whole();
  for (let step = 0; step < 120; step++) await book.undo();
  expect(await whole()).toEqual(before);
  expect(await book.undo()).toBe(false);
  for (let step = 0; step < 120; step++) await book.redo();
  expect(await whole()).toEqual(after);
});
