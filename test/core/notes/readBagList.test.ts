/** Lists as people keep them; what each line means is plain to a reader, feet by definition 0.3048 m. */
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readBagList } from "../../../src/core/notes/readBagList";

const FOOT = 0.3048;
const read = (text: string) => readBagList(text, DEFAULT_SETTINGS);
const inShort = (text: string) =>
  read(text).discs.map(({ disc, type, guessedFrom, carriesM }) => [
    disc,
    type,
    guessedFrom,
    carriesM.map((metres) => Math.round(metres / FOOT)),
  ]);

test("takes names alone, and guesses the type from a word of the name", () => {
  expect(inShort("Copper mid\nSand Approach\nNo. 7\nViolet distance driver")).toEqual([
    ["Copper mid", "midrange", "mid", []],
    ["Sand Approach", "putter", "Approach", []],
    ["No. 7", null, null, []],
    ["Violet distance driver", "distance", "distance driver", []],
  ]);
});

test.each([
  ["spaces", "Copper mid 271 268"],
  ["commas", "Copper mid, 271, 268"],
  ["bullets and a colon", "- Copper mid: 271, 268"],
  ["units", "1. Copper mid 271 ft 268'"],
  ["two lines of one disc", "Copper mid 271\ncopper  mid 268"],
])("takes carries with %s", (_, text) => {
  expect(inShort(text)).toEqual([["Copper mid", "midrange", "mid", [271, 268]]]);
});

test("a written type beats the name, in cells or under a heading", () => {
  expect(inShort("Copper mid (putter) 200\nSteel, fairway driver, 310")).toEqual([
    ["Copper mid", "putter", null, [200]],
    ["Steel", "fairway", null, [310]],
  ]);
  expect(inShort("Putters\nSlate\nDrivers:\nViolet 402")).toEqual([
    ["Slate", "putter", null, []],
    ["Violet", "distance", null, [402]],
  ]);
});

test("reads rows of a sheet by their header, in any order and unit", () => {
  const { discs, unread } = read(
    "Type\tDisc\tWeight\tCarry (m)\tColour\nmid\tCopper\t180 g\t82.5\tred\n\tSteel 2\t\t\tblue",
  );
  expect(discs).toMatchObject([
    { disc: "Copper", type: "midrange", guessedFrom: null, weight: 180, carriesM: [82.5] },
    { disc: "Steel 2", type: null, weight: null, carriesM: [], fromLine: 3 },
  ]);
  expect(unread).toEqual([]);
});

test("a single digit at the end is a name, grams are a weight", () => {
  expect(read("Copper mid 2 175g 271").discs).toMatchObject([
    { disc: "Copper mid 2", weight: 175, carriesM: [271 * FOOT] },
  ]);
});

test("names what it cannot read, and keeps the disc", () => {
  const { discs, unread } = read("Copper mid 270-290\nSteel 9000\nDisc,Carry (yd)\n:: 300");
  expect(discs.map(({ disc }) => disc)).toContain("Copper mid");
  expect(unread.map(({ fromLine }) => fromLine)).toEqual(expect.arrayContaining([1, 2, 4]));
  expect(read("Disc,Carry (yd)\nCopper,90").unread).toMatchObject([
    { fromLine: 2, text: "90", reason: "Only feet and metres are read." },
  ]);
});

test("nothing gives nothing", () => {
  expect(read(" \n\n")).toEqual({ discs: [], unread: [] });
});
