/** How little is read: one request for all that the pane shows, whatever came or went. */
import { emptyBlueprint } from "../../src/workbook/blueprint";
import { contractBlueprint } from "../workbook/contractBlueprint";
import { readRawBook } from "../../src/pane/book/book";
import { openExcel } from "./support/openExcel";

const ASKED = ["Throws", "Bag", "Course"];

async function opened() {
  const excel = openExcel();
  await excel.port.build(contractBlueprint);
  await excel.port.readTogether(ASKED, ["Limits"]);
  excel.host.syncs = 0;
  return excel;
}

test("the pane reads all tables and settings with one request, every time after the first", async () => {
  const { host, port } = openExcel();
  await port.build(emptyBlueprint());
  const first = await readRawBook(port);
  host.syncs = 0;
  expect(await readRawBook(port)).toEqual(first);
  expect(host.syncs).toBe(1);
  expect(first.throws!.headers).toContain("Carry");
  expect(first.settings!.length).toBeGreaterThan(5);
  expect(host.unknown).toEqual([]);
});

test("each table and range is as read alone; what is missing is null", async () => {
  const { port } = await opened();
  const read = await port.readTogether([...ASKED, "None"], ["Limits", "Nowhere"]);
  expect(read).toEqual({
    tables: [
      await port.readTable("Throws"),
      await port.readTable("Bag"),
      await port.readTable("Course"),
      null,
    ],
    ranges: [await port.readRange("Limits"), null],
    tableNames: await port.tableNames(),
  });
});

test("a table that went is null, one that came is read", async () => {
  const { host, port } = await opened();
  host.book.findTable("Throws")!.name = "Course";
  const read = await port.readTogether(ASKED, ["Limits"]);
  expect(read.tables.map((table) => table?.name)).toEqual([undefined, "Bag", "Course"]);
  expect(read.ranges[0]).toEqual(await port.readRange("Limits"));
  expect(host.unknown).toEqual([]);
});

test("a name that stands for no range leaves the rest readable", async () => {
  const { host, port } = await opened();
  host.book.names.get("limits")!.formula = "=#REF!";
  const read = await port.readTogether(ASKED, ["Limits"]);
  expect(read.tables[0]!.name).toBe("Throws");
  expect(read.ranges).toEqual([null]);
});
