import { addRows, writeSettings } from "../../src/pane/book/book";
import { takeBack } from "../../src/pane/undo/takeBack";
import { starterPort } from "./starterBook";

const row = { Disc: "Copper mid", Carry: 301, Date: 46351 };
const contents = async (port: ReturnType<typeof starterPort>) => [
  (await port.readTable("Throws"))!.rows,
  await port.readRange("Settings"),
];

test("added rows are taken back, and nothing else", async () => {
  const port = starterPort();
  const before = await contents(port);
  const change = await addRows(port, "Throws", [row, { ...row, Carry: 290 }]);
  await takeBack(port, [change]);
  expect(await contents(port)).toEqual(before);
});

test("a row is found again after the table was sorted", async () => {
  const port = starterPort();
  const before = (await port.readTable("Throws"))!.rows;
  const change = await addRows(port, "Throws", [row]);
  port.tables.get("Throws")!.rows.reverse();
  await takeBack(port, [change]);
  expect((await port.readTable("Throws"))!.rows).toEqual([...before].reverse());
});

test("a row that was edited meanwhile stays, with a sentence", async () => {
  const port = starterPort();
  const change = await addRows(port, "Throws", [row]);
  const index = port.tables.get("Throws")!.rows.length - 1;
  port.edit("Throws", index, "Carry", 999);
  await expect(takeBack(port, [change])).rejects.toThrow("has changed meanwhile");
  expect(port.tables.get("Throws")!.rows[index]![2]).toBe(999);
});

test("settings are written by name and come back alone", async () => {
  const port = starterPort();
  const before = await contents(port);
  const change = await writeSettings(port, { uphillFactor: 1.1, headwindFactor: 0.8 });
  const valueOf = (label: string) =>
    port.ranges.get("Settings")!.find(([name]) => name === label)![1];
  expect([valueOf("Uphill factor"), valueOf("Headwind factor")]).toEqual([1.1, 0.8]);
  await takeBack(port, [change]);
  expect(await contents(port)).toEqual(before);
});

test("a setting that was changed since is not overwritten", async () => {
  const port = starterPort();
  const change = await writeSettings(port, { uphillFactor: 1.1 });
  await writeSettings(port, { uphillFactor: 1.3 });
  await expect(takeBack(port, [change])).rejects.toThrow("Settings has changed meanwhile");
});

test("a range without the label is left alone", async () => {
  const port = starterPort();
  port.ranges.set("Settings", [["Player", "Me"]]);
  await expect(writeSettings(port, { headwindFactor: 1 })).rejects.toThrow(
    "Settings has no Headwind factor.",
  );
});
