/** From the invented data to a player's own bag, and back. */
import { coveredOf, isThin, twinsOf } from "../../src/pane/bag/model";
import { addOwnBag, addStrangers, emptyInvented, setOwnBag } from "../../src/pane/ownBag/actions";
import { inventedIn, isInvented, strangersIn } from "../../src/pane/ownBag/model";
import { PaneDesk } from "../../src/pane/controller";
import { firstState, Store } from "../../src/pane/state";
import { bookIn, starterPort } from "./starterBook";

const LIST = "Copper mid 271 268\nSteel, fairway driver, 310\nSlate putter";

async function opened(port = starterPort()) {
  const desk = new PaneDesk(new Store(firstState("setup")), port, { today: () => 46400 });
  await desk.refresh();
  return { desk, port };
}
const filled = (rows: readonly (readonly unknown[])[]) =>
  rows.filter((row) => row.some((cell) => cell !== ""));
const contents = async (port: ReturnType<typeof starterPort>) =>
  Object.fromEntries(
    await Promise.all(
      ["Throws", "Bag", "Course", "Results"].map(async (name) => [
        name,
        filled((await port.readTable(name))!.rows),
      ]),
    ),
  ) as Record<string, unknown[][]>;

test("the invented data goes in one step, and comes back in one", async () => {
  const { desk, port } = await opened();
  const before = await contents(port);
  const putting = await port.readRange("Putting");
  expect(isInvented(desk.state.book!)).toBe(true);
  await emptyInvented(desk);
  expect(Object.values(await contents(port)).flat()).toEqual([]);
  expect((await port.readRange("Putting"))!.flat().every((cell) => cell === "")).toBe(true);
  expect(isInvented(desk.state.book!)).toBe(false);
  await desk.undo("setup");
  expect(await contents(port)).toEqual(before);
  expect(await port.readRange("Putting")).toEqual(putting);
});

test("rows of the player's own stay where the invented ones go", async () => {
  const { desk, port } = await opened();
  await port.addRows("Throws", [{ Disc: "Steel", Carry: 310 }]);
  await desk.refresh();
  await emptyInvented(desk);
  expect((await contents(port))["Throws"]).toHaveLength(1);
  expect(inventedIn(desk.state.book!.raw)).toEqual([]);
});

test("a list takes the place of the invented data, and the card answers from it", async () => {
  const { desk, port } = await opened();
  const before = await contents(port);
  setOwnBag(desk, { text: LIST, types: { "slate putter": "" } });
  await addOwnBag(desk);
  const { Throws, Bag, Course } = await contents(port);
  expect(Bag!.map((row) => row.slice(0, 2))).toEqual([
    ["Copper mid", "midrange"],
    ["Steel", "fairway"],
    ["Slate putter", ""],
  ]);
  expect(Throws!.map((row) => row.slice(0, 3))).toEqual([
    ["", "Copper mid", 271],
    ["", "Copper mid", 268],
    ["", "Steel", 310],
  ]);
  expect(Course).toEqual([]);
  expect(desk.state.book!.card.rows.map(({ disc }) => disc)).toEqual(["Steel", "Copper mid"]);
  expect(desk.state.notices.setup).toMatchObject({ canUndo: true });
  await desk.undo("setup");
  expect(await contents(port)).toEqual(before);
});

test("a disc that was thrown and is not in the bag is offered to it", async () => {
  const { desk, port } = await opened();
  await port.addRows("Throws", [
    { Disc: "Steel", Carry: 310 },
    { Disc: " steel ", Carry: 312 },
  ]);
  await desk.refresh();
  expect(strangersIn(desk.state.book!)).toEqual(["Steel"]);
  await addStrangers(desk, "bag");
  expect(strangersIn(await bookIn(port))).toEqual([]);
  await desk.undo("bag");
  expect(strangersIn(await bookIn(port))).toEqual(["Steel"]);
});

test("single throws make no gap and no twins", async () => {
  const { desk } = await opened();
  expect(twinsOf(desk.state.book!)).toMatchObject({ ok: true, value: expect.any(Array) });
  expect(isThin(desk.state.book!)).toBe(false);
  const names = "Ash Bay Cob Dew Elm Fig Gum Hay Ivy Jet".split(" ");
  setOwnBag(desk, { text: names.map((name, at) => `${name} ${200 + 12 * at}`).join("\n") });
  await addOwnBag(desk);
  const book = desk.state.book!;
  expect(book.card.rows).toHaveLength(10);
  expect(isThin(book)).toBe(true);
  expect(twinsOf(book)).toEqual({ ok: true, value: [] });
  expect(coveredOf(book)).toMatchObject({ ok: true, value: { gaps: [] } });
});
