import { starterBlueprint } from "../../src/workbook/blueprint/index";
import {
  type LightBook,
  rangeAt,
  readRange,
  sheetOf,
  TableOfBook,
  writeRange,
} from "../../src/workbook/light/lightBook";
import { isChanged, mergeBooks, settle } from "../../src/phone/mergeBooks";
import type { CellValue, Row } from "../../src/workbook/port";

function starter(): LightBook {
  const made = starterBlueprint().sheets.map(sheetOf);
  return { sheets: made.map(({ sheet }) => sheet), names: made.flatMap(({ names }) => names) };
}

const table = (book: LightBook, name: string): TableOfBook => TableOfBook.get(book, name);
const rowsOf = (book: LightBook, name: string): readonly (readonly CellValue[])[] =>
  table(book, name)
    .read()
    .rows.filter((row) => row.some((cell) => cell !== ""));
const setting = (book: LightBook, label: string): CellValue =>
  readRange(rangeAt(book, "Settings")!).find(([text]) => text === label)![1]!;
function setSetting(book: LightBook, label: string, value: CellValue): void {
  const cells = readRange(rangeAt(book, "Settings")!);
  cells.find(([text]) => text === label)![1] = value;
  writeRange(book, "Settings", cells);
}

const THROWN: Row = { Date: 46360, Disc: "Copper mid", Carry: 281 };

let ancestor: LightBook;
let phone: LightBook;
let desk: LightBook;
beforeEach(() => {
  ancestor = starter();
  phone = starter();
  desk = starter();
});

test("two that did not change are the same", () => {
  expect(isChanged(ancestor, phone)).toBe(false);
  expect(mergeBooks(ancestor, phone, desk).book).toEqual(desk);
});

test("throws of the phone come into the desk's file, in addition to the desk's own", () => {
  table(phone, "Throws").add([THROWN, THROWN, { ...THROWN, Carry: 290 }]);
  table(desk, "Throws").add([{ ...THROWN, Disc: "Rose mid" }]);
  const before = rowsOf(ancestor, "Throws").length;
  const merged = mergeBooks(ancestor, phone, desk);
  expect(merged).toMatchObject({ added: 3, changed: 0, removed: 0 });
  expect(
    rowsOf(merged.book, "Throws")
      .slice(before)
      .map((row) => row.slice(0, 3)),
  ).toEqual([
    [46360, "Rose mid", 281],
    [46360, "Copper mid", 281],
    [46360, "Copper mid", 281],
    [46360, "Copper mid", 290],
  ]);
});

test("throws that the file was given before are not added again, even with a note since", () => {
  table(phone, "Throws").add([THROWN, { ...THROWN, Carry: 290 }]);
  table(desk, "Throws").add([
    { ...THROWN, Note: "wet" },
    { ...THROWN, Carry: 290 },
    { Disc: "Rose mid", Carry: 240 },
  ]);
  const merged = mergeBooks(ancestor, phone, desk);
  expect(merged.added).toBe(0);
  expect(merged.book).toEqual(desk);
});

test("a row that only the phone changed is changed, one that both changed stays the file's", () => {
  table(phone, "Bag").change([
    { index: 0, was: {}, becomes: { "In bag": "no" } },
    { index: 1, was: {}, becomes: { "In bag": "no" } },
  ]);
  table(desk, "Bag").change([{ index: 1, was: {}, becomes: { Note: "new rim" } }]);
  const merged = mergeBooks(ancestor, phone, desk);
  expect(merged).toMatchObject({ added: 0, changed: 1, filesKept: 1 });
  const at = table(desk, "Bag").read().headers.indexOf("In bag");
  const was = rowsOf(desk, "Bag");
  const is = rowsOf(merged.book, "Bag");
  expect(is).toHaveLength(was.length);
  expect(is[0]![at]).toBe("no");
  expect(is[1]).toEqual(was[1]);
});

test("a row that the phone removed goes, wherever the desk has moved it", () => {
  const gone = rowsOf(ancestor, "Throws")[3]!;
  table(phone, "Throws").remove([{ index: 3, was: {} }]);
  table(desk, "Throws").remove([{ index: 0, was: {} }]);
  const merged = mergeBooks(ancestor, phone, desk);
  expect(merged.removed).toBe(1);
  expect(rowsOf(merged.book, "Throws")).toHaveLength(rowsOf(ancestor, "Throws").length - 2);
  expect(rowsOf(merged.book, "Throws")[2]).not.toEqual(gone);
});

test("settings: one side's change is taken, two different ones are asked about", () => {
  setSetting(phone, "Altitude", 900);
  setSetting(desk, "Circle", 9);
  setSetting(phone, "Player", "Ann");
  setSetting(desk, "Player", "Bea");
  setSetting(phone, "Humidity", 0.5);
  setSetting(desk, "Humidity", 0.5);
  const { book, inDoubt } = mergeBooks(ancestor, phone, desk);
  expect([setting(book, "Altitude"), setting(book, "Circle"), setting(book, "Player")]).toEqual([
    900,
    9,
    "Bea",
  ]);
  expect(inDoubt).toEqual([{ label: "Player", onPhone: "Ann", inFile: "Bea" }]);
  settle(book, inDoubt[0]!);
  expect(setting(book, "Player")).toBe("Ann");
});

test("the putting table is one setting", () => {
  const putts = readRange(rangeAt(phone, "Putting")!);
  putts[0]![1] = 0.9;
  writeRange(phone, "Putting", putts);
  const { book, inDoubt } = mergeBooks(ancestor, phone, desk);
  expect(inDoubt).toEqual([]);
  expect(readRange(rangeAt(book, "Putting")!)).toEqual(putts);
  expect(isChanged(ancestor, phone)).toBe(true);
});
