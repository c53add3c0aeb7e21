import fc from "fast-check";
import { Direction } from "@univerjs/core";
import {
  InsertColCommand,
  InsertRowCommand,
  RemoveColCommand,
  RemoveRowCommand,
  ReorderRangeCommand,
  SetWorksheetActiveOperation,
} from "@univerjs/sheets";
import { TableManager } from "@univerjs/sheets-table";
import { bundleInNode } from "../../../src/page/bundleInNode";
import { starterBlueprint } from "../../../src/workbook/blueprint";
import type { Row } from "../../../src/workbook/port";
import { loadFunctions } from "../../support/customFunctions";
import { BookInHand } from "./bookInHand";

/**
 * Whatever is changed in the starter workbook, every cell of every sheet shows afterwards what it shows
 * once all formulas are worked out anew. CARRYBOOK_RUNS tries more cases than the few of every day.
 */
const bundle = { ...bundleInNode("dist"), functions: loadFunctions() };
const RUNS = Number(process.env.CARRYBOOK_RUNS ?? 4);

type Act = (book: BookInHand, pick: number) => Promise<unknown>;

const nth = <Item>(items: readonly Item[], pick: number): Item => items[pick % items.length]!;

async function rowsOf(book: BookInHand, table: string): Promise<Row[]> {
  const { headers, rows } = (await book.port.readTable(table))!;
  return rows.map((cells) => Object.fromEntries(cells.map((cell, at) => [headers[at]!, cell])));
}

async function removeSome(book: BookInHand, table: string, pick: number): Promise<void> {
  const rows = await rowsOf(book, table);
  const from = pick % rows.length;
  const some = rows
    .slice(from, from + 1 + (pick % 9))
    .map((was, at) => ({ index: from + at, was }));
  await book.port.removeRows(table, some);
}

/** The whole of a row or column of a sheet, which is brought into view first: only there can a person change it. */
async function lines(book: BookInHand, sheet: string, at: number, rows: boolean): Promise<object> {
  const worksheet = book.sheet(sheet);
  const { unitId } = book.opened.engine;
  const subUnitId = worksheet.getSheetId();
  await book.run(SetWorksheetActiveOperation.id, { unitId, subUnitId });
  const [endRow, endColumn] = [worksheet.getRowCount() - 1, worksheet.getColumnCount() - 1];
  const range = rows
    ? { startRow: at, endRow: at, startColumn: 0, endColumn }
    : { startRow: 0, endRow, startColumn: at, endColumn: at };
  return { unitId, subUnitId, range };
}

/** Formulas of a player's own, far to the right, over what the starter spills. */
const OWN_FORMULAS = [
  "=SUM(Card!B3:B40)",
  "=COUNTA(Card!A10:A60)",
  "=MAX(Card!C15:C60)",
  "=SEQUENCE(COUNT(Card!B4:B60))",
  "=UNIQUE(Throws[Disc])",
  "=SORT(Throws[Carry])",
  "=FILTER(Throws[Disc],Throws[Carry]>330)",
  "=COUNTA(R3:R60)",
  "=SUM(T3:T60)*2",
  "=CARRY.CARD(Throws[#All],Settings)",
  "=CARRY.BEST(300,Throws[#All],Settings)",
];

const acts: Record<string, Act> = {
  "change a carry": async (book, pick) => {
    const rows = await rowsOf(book, "Throws");
    const was = nth(rows, pick);
    const becomes = { Carry: nth([0, 120, 299, 301, 344.5, 410, "", "far"], pick) };
    await book.port.changeRows("Throws", [{ index: rows.indexOf(was), was, becomes }]);
  },
  "change the disc of a throw": async (book, pick) => {
    const rows = await rowsOf(book, "Throws");
    const was = nth(rows, pick);
    const becomes = { Disc: nth(rows, pick * 7 + 3)["Disc"]! };
    await book.port.changeRows("Throws", [{ index: rows.indexOf(was), was, becomes }]);
  },
  "add throws": (book, pick) =>
    book.port.addRows(
      "Throws",
      Array.from({ length: 1 + (pick % 3) }, (_, at) => ({
        Disc: nth(["Copper mid", "Mint fairway", "A new disc"], pick + at),
        Carry: 250 + ((pick * 13 + at) % 150),
      })),
    ),
  "remove throws": (book, pick) => removeSome(book, "Throws", pick),
  "remove holes": (book, pick) => removeSome(book, "Course", pick),
  "remove discs": (book, pick) => removeSome(book, "Bag", pick),
  "choose a player": (book, pick) =>
    book.type("Start", { F24: nth(["Partner", "Nobody", "", "Me"], pick) }),
  "change this throw": (book, pick) =>
    book.type("Start", { [nth(["B12", "B13", "B14"], pick)]: (pick % 60) * 7 - 20 }),
  "write a formula": (book, pick) =>
    book.typeAt("Start", 2 + (pick % 40), 17 + (pick % 5), nth(OWN_FORMULAS, pick)),
  "write in the way": (book, pick) =>
    book.typeAt(
      nth(["Card", "Start"], pick),
      4 + (pick % 12),
      17 + (pick % 4),
      pick % 3 ? pick : null,
    ),
  "put a cell in a spill": (book, pick) =>
    book.typeAt("Card", 3 + (pick % 15), 1 + (pick % 3), pick % 2 ? 1000 + pick : null),
  "insert a row": async (book, pick) =>
    book.run(InsertRowCommand.id, {
      ...(await lines(book, nth(["Start", "Card", "Log", "Holes"], pick), pick % 20, true)),
      direction: Direction.UP,
    }),
  "remove a row": async (book, pick) =>
    book.run(
      RemoveRowCommand.id,
      await lines(book, nth(["Start", "Card", "Log"], pick), 7 + (pick % 20), true),
    ),
  "insert a column": async (book, pick) =>
    book.run(InsertColCommand.id, {
      ...(await lines(book, nth(["Start", "Card"], pick), 16 + (pick % 3), false)),
      direction: Direction.LEFT,
    }),
  "remove a column": async (book, pick) =>
    book.run(RemoveColCommand.id, await lines(book, "Start", 16 + (pick % 6), false)),
  "turn the throws over": async (book) => {
    const { injector, unitId } = book.opened.engine;
    const [throws] = injector
      .get(TableManager)
      .getTableList(unitId)
      .filter(({ name }) => name === "Throws");
    const range = { ...throws!.range, startRow: throws!.range.startRow + 1 };
    const order: Record<number, number> = {};
    for (let row = range.startRow; row <= range.endRow; row++)
      order[row] = range.startRow + range.endRow - row;
    await book.run(ReorderRangeCommand.id, { unitId, subUnitId: throws!.subUnitId, range, order });
  },
  undo: (book) => book.undo(),
  redo: (book) => book.redo(),
};

const step = fc.record({
  act: fc.constantFrom(...Object.keys(acts)),
  pick: fc.nat(10_000),
  /** Whether the next change waits for the calculation. */
  waits: fc.boolean(),
});

it("shows after any changes what a calculation of everything shows", async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 6, maxLength: 12 }), async (steps) => {
      const book = await BookInHand.open(starterBlueprint(), bundle);
      try {
        for (const [at, { act, pick, waits }] of steps.entries()) {
          await acts[act]!(book, pick);
          if (!waits && at < steps.length - 1) continue;
          await book.settled();
          const shown = book.shown();
          await book.port.recalculate();
          expect({ after: act, ...shown }).toEqual({ after: act, ...book.shown() });
        }
      } finally {
        book.close();
      }
    }),
    { numRuns: RUNS, endOnFailure: true },
  );
});
