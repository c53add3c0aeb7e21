import type { LightBook } from "../../src/workbook/light/lightBook";
import {
  type Keeper,
  type LightChange,
  LightPort,
  makeChange,
} from "../../src/workbook/light/lightPort";
import { portContract } from "./contract";
import { contractBlueprint } from "./contractBlueprint";

const empty = (): LightBook => ({
  sheets: [{ name: "Mine", rows: [], formulas: [], tables: [] }],
  names: [],
});

/** Keeps changes in memory, and makes them again when asked for the workbook. */
class MemoryKeeper implements Keeper {
  full = false;
  private readonly kept: LightChange[] = [];

  async keep(change: LightChange): Promise<void> {
    if (this.full) throw new Error("No room left.");
    this.kept.push(structuredClone(change));
  }

  async load(): Promise<LightBook> {
    const book = empty();
    this.kept.forEach((change) => makeChange(book, change));
    return book;
  }
}

portContract(
  "light",
  async () => ({
    port: new LightPort(empty(), new MemoryKeeper()),
    calculated: async () => {},
    close: () => {},
  }),
  { calculates: false },
);

test("what was kept makes the same workbook again", async () => {
  const keeper = new MemoryKeeper();
  const port = new LightPort(empty(), keeper);
  await port.build(contractBlueprint);
  await port.addRows("Throws", [{ Disc: "Copper mid", Carry: 300 }]);
  await port.changeRows("Bag", [{ index: 0, was: {}, becomes: { "In bag": "no" } }]);
  await port.removeRows("Throws", [{ index: 1, was: { Carry: 248 } }]);
  await port.writeRange("Limits", [
    ["Longest", 410],
    ["Ready", false],
    ["Blank", ""],
  ]);
  await port.replaceSheet({ name: "Pocket", blocks: [] });
  expect(await keeper.load()).toEqual(port.book);
});

test("a change that cannot be kept is not made", async () => {
  const keeper = new MemoryKeeper();
  const port = new LightPort(empty(), keeper);
  await port.build(contractBlueprint);
  const before = await port.readTable("Throws");
  keeper.full = true;
  await expect(port.addRows("Throws", [{ Disc: "Copper mid", Carry: 300 }])).rejects.toThrow(
    "No room left.",
  );
  expect(await port.readTable("Throws")).toEqual(before);
});
