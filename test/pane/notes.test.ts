/** What the pane makes of notes: which throws come ticked, and what it says of the others. */
import { rowOf } from "../../src/core/carry/levelThrows";
import { understand, type UnderstoodRow } from "../../src/pane/notes/model";
import { EMPTY_NOTES, type NotesForm } from "../../src/pane/forms";
import { emptyBook, starterBook } from "./starterBook";

const TODAY = 46353; // 2026-11-27

async function rowsOf(text: string, form: Partial<NotesForm> = {}): Promise<UnderstoodRow[]> {
  return [...understand({ ...EMPTY_NOTES, text, ...form }, await starterBook(), TODAY).rows];
}
const inShort = ({ taken, doubts }: UnderstoodRow): [boolean, string] => [
  taken,
  doubts.replaceAll("\u00a0", " "),
];

test("an ordinary throw comes ticked, with nothing to say", async () => {
  const [row] = await rowsOf("copper mid 271");
  expect(row).toMatchObject({ taken: true, doubts: "", readAs: "" });
});

describe("a carry that is hardly one comes unticked", () => {
  test("under 40 ft whatever the disc", async () => {
    const said = [
      [true, ""],
      [false, "Very short for a carry."],
    ];
    expect((await rowsOf("copper mid 300 31")).map(inShort)).toEqual(said);
    expect((await rowsOf("ruby putter 40 39")).map(inShort)).toEqual(said);
  });

  test("under half or over one and a half times what the disc carries", async () => {
    const { card } = await starterBook();
    const smooth = Math.exp(rowOf(card, "Copper mid").mu) / 0.3048;
    const far = `Far from the ${Math.round(smooth)} ft that Copper mid carries.`;
    const [low, high] = [Math.ceil(smooth / 2), Math.floor(smooth * 1.5)];
    const text = `copper mid ${low - 1} ${low} ${high} ${high + 1}`;
    expect((await rowsOf(text)).map(inShort)).toEqual([
      [false, far],
      [true, ""],
      [true, ""],
      [false, far],
    ]);
  });

  test("unless it is marked off, thrown softly, or of a disc without throws", async () => {
    expect((await rowsOf("copper mid 120 x")).map(inShort)).toEqual([[true, ""]]);
    expect((await rowsOf("copper mid 130 50%")).map(inShort)).toEqual([[true, ""]]);
    expect((await rowsOf("ruby putter 120")).map(inShort)).toEqual([[true, ""]]);
    const empty = understand({ ...EMPTY_NOTES, text: "copper mid 130" }, await emptyBook(), TODAY);
    expect(empty.rows.map(inShort)).toEqual([[true, ""]]);
  });

  test("by the disc that the player chose for the name", async () => {
    const text = "violt driver 150";
    expect((await rowsOf(text)).map(({ taken }) => taken)).toEqual([true]);
    const renamed = { "violt driver": "Violet driver" };
    expect((await rowsOf(text, { renamed })).map(({ taken }) => taken)).toEqual([false]);
  });
});

describe("a day that cannot be right comes unticked", () => {
  const TO_COME = "This day is still to come.";

  test("one after today, written or chosen", async () => {
    expect((await rowsOf("2026-11-28 copper mid 271")).map(inShort)).toEqual([[false, TO_COME]]);
    expect((await rowsOf("2026-11-27 copper mid 271")).map(inShort)).toEqual([[true, ""]]);
    expect((await rowsOf("copper mid 271", { day: "2026-12-01" })).map(inShort)).toEqual([
      [false, TO_COME],
    ]);
  });

  test("one that was not read", async () => {
    expect((await rowsOf("copper mid 271 31 May")).map(inShort)).toEqual([
      [false, "Its date was not read."],
    ]);
    const both = (await rowsOf("copper mid 31 31 May")).map(inShort);
    expect(both).toEqual([[false, "Its date was not read. Very short for a carry."]]);
  });
});

test("a tick by hand stays, whatever else changes", async () => {
  const ticked = { 0: true };
  const text = "copper mid 120";
  expect((await rowsOf(text, { ticked })).map(({ taken }) => taken)).toEqual([true]);
  const later = await rowsOf(text, { ticked, day: "2026-11-01" });
  expect(later.map(({ taken }) => taken)).toEqual([true]);
  expect((await rowsOf("copper mid 271", { ticked: { 0: false } }))[0]!.taken).toBe(false);
});

test("how an x between two carries was read stands at its row, which stays ticked", async () => {
  const rows = await rowsOf("mint fairway 352, 344 x 290");
  expect(rows.map(({ taken, thrown }) => [taken, thrown.line])).toEqual([
    [true, ""],
    [true, ""],
    [true, "off"],
  ]);
  expect(rows.map(({ readAs }) => readAs === "")).toEqual([true, true, false]);
});
