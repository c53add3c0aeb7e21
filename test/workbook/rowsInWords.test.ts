/** What is said after a file was opened: how many rows count, and the first that does not. */
import { blueprintOf } from "../../src/workbook/blueprint";
import { EMPTY } from "../../src/workbook/blueprint/content";
import { writeBook } from "../../src/workbook/file/bookBytes";
import { FilePort } from "../../src/workbook/file/filePort";
import { openFile } from "../../src/workbook/file/openFile";

const opened = (text: string): ReturnType<typeof openFile> =>
  openFile(new TextEncoder().encode(text), "throws.csv");
const counted = async (...lines: string[]): Promise<string> =>
  (await opened(lines.join("\n"))).counted;
const dates = async (...texts: string[]): Promise<unknown[]> => {
  const rows = texts.map((text) => `${text};Copper mid;271`);
  const { content } = await opened(["Date;Disc;Carry", ...rows].join("\n"));
  return content.throws.map(([date]) => date);
};

describe("rows are told in words", () => {
  test.each([
    ["all of them", ["Disc,Carry", "A,271", "B,300"], "2 rows, all count."],
    ["one", ["Disc,Carry", "A,271"], "1 row, and it counts."],
    ["none at all", ["Disc,Carry"], "no throws."],
    [
      "some, by their row in the sheet",
      ["Disc,Carry", "A,271", "", "B,", "C,300"],
      "3 rows: 2 count, 1 does not. Row 7: carry is blank.",
    ],
    [
      "marks last",
      ["Disc,Carry,Line", "A,271,off", "B,300,x", "C,abc,", "D,301,"],
      "4 rows: 1 counts, 3 do not. Row 8: carry is text, 'abc'. Type it as a number.",
    ],
    [
      "players without a choice",
      ["Disc,Carry,Player", "A,271,Ana", "A,272,Ben"],
      "2 rows, none counts yet. The log holds throws of Ana and Ben. Choose one by the setting Player: write the name beside it.",
    ],
    ["marks alone", ["Disc,Carry,Line", "A,271,off"], "1 row, none counts yet. Row 6: marked off."],
    [
      "dates that can be read in two ways",
      ["Date,Disc,Carry", "11/1/2026,A,271", "11/2/2026,A,271"],
      "2 rows, none counts yet. Row 6: 11/1/2026 can be read in two ways. Write the dates as year-month-day.",
    ],
    [
      "text that is no date",
      ["Date,Disc,Carry", "soon,A,271"],
      "1 row, none counts yet. Row 6: the date is text, 'soon'. Type it again so that the sheet takes it as a date, or as year-month-day.",
    ],
  ])("%s", async (_, lines, words) => expect(await counted(...lines)).toBe(words));

  test("in the units of the file's own settings, for its own player", async () => {
    const settings = new Map([
      ["distances in", "m"],
      ["player", "Me"],
    ]);
    const row = (carry: number, player: string): (string | number)[] => [
      "",
      "A",
      carry,
      "",
      "",
      "",
      "",
      "",
      player,
      "",
    ];
    const throws = [row(120, ""), row(600, ""), row(120, "Partner")];
    const { book } = FilePort.create(blueprintOf({ ...EMPTY, settings, throws }));
    expect((await openFile(await writeBook(book))).counted).toBe(
      "3 rows: 1 counts, 2 do not. Row 7: carry is 600, farther than any throw. Look at the number and its unit.",
    );
  });
});

describe("dates as text become days where the column tells which", () => {
  test.each([
    ["points", ["01.11.2026"], [46327]],
    ["month first", ["11/1/2026", "11/13/2026"], [46327, 46339]],
    ["day first", ["1/11/2026", "31/12/2026"], [46327, 46387]],
    ["undecided", ["11/1/2026"], ["11/1/2026"]],
    ["blanks between", ["", "31/12/2026"], ["", 46387]],
  ])("%s", async (_, texts, days) => expect(await dates(...texts)).toEqual(days));

  test("in a workbook of ours too", async () => {
    const throws = ["1/11/2026", "31/12/2026", 46339].map((date) => [date, "A", 300]);
    const { book } = FilePort.create(blueprintOf({ ...EMPTY, throws }));
    const { content } = await openFile(await writeBook(book));
    expect(content.throws.map(([date]) => date)).toEqual([46327, 46387, 46339]);
  });
});

describe("the bag", () => {
  test("of a file without one has the discs of its log, once each", async () => {
    const { content } = await opened(
      "Disc,Carry\nMint fairway,318\n copper  mid,271\nCopper mid,280\n,300",
    );
    expect(content.bag).toEqual([
      ["Mint fairway", "", "", "", "", ""],
      ["copper  mid", "", "", "", "", ""],
    ]);
    const sheet = FilePort.create(blueprintOf(content)).book.getWorksheet("Discs")!;
    expect(sheet.getCell("A6").value).toBe("Mint fairway");
  });

  test.each([
    ["filled", [["Slate putter", "putter", "", "", "", ""]]],
    ["empty", []],
  ])("of a file that has one stays as it is: %s", async (_, bag) => {
    const throws = [["", "Copper mid", 271]];
    const { book } = FilePort.create(blueprintOf({ ...EMPTY, bag, throws }));
    expect((await openFile(await writeBook(book))).content.bag).toEqual(bag);
  });
});
