import {
  bagOf,
  doubted,
  doubtOf,
  EMPTY_START,
  entryOf,
  leastKnownFirst,
  loggedRows,
  progressOf,
  type Session,
  sessionFrom,
  throwsOf,
} from "../../src/pane/field/model";
import { type Book, rowIn } from "../../src/pane/book/book";
import { rowsFor } from "../../src/pane/book/newThrows";
import { bookIn, starterPort } from "./starterBook";

const TODAY = 46400;
const port = starterPort();
let book: Book;
let session: Session;
beforeAll(async () => {
  book = await bookIn(port);
  session = sessionFrom({ ...EMPTY_START, order: "listed" }, book.settings, TODAY);
});

const still = () => 0;

test("a fresh session begins with the first disc of the bag and leaves out the one at home", () => {
  const progress = progressOf(session, book, still);
  const discs = book.bag.length - 1;
  expect(progress).toMatchObject({ thrown: 0, discs, round: 1, disc: "Slate putter" });
  expect(bagOf(book)).not.toContain(book.bag.find(({ inBag }) => !inBag)!.disc);
});

test("each disc comes up once before any comes again", async () => {
  const own = starterPort();
  const order: string[] = [];
  const discs = bagOf(book).length;
  for (let at = 0; at <= discs; at++) {
    const now = await bookIn(own);
    const { disc } = progressOf(session, now, still);
    order.push(disc!);
    const entry = entryOf({ ...session, carry: "250" }, disc!, now.settings);
    await own.addRows("Throws", rowsFor(now.raw.throws!, [entry], now.settings));
  }
  expect(new Set(order.slice(0, discs)).size).toBe(discs);
  expect(order[discs]).toBe(order[0]);
  const last = progressOf(session, await bookIn(own), still);
  expect(last).toMatchObject({ thrown: 1, round: 2 });
});

test("least known first: no throw at all, then the one that a throw sharpens most", () => {
  const rank = leastKnownFirst(book);
  const first = progressOf({ ...session, order: "worth" }, book, rank);
  const ranks = [first.disc!, ...first.after].map(rank);
  expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  expect(rank("never thrown")).toBe(-Infinity);
  // By hand: a disc with one throw gains more from the next than one with ten.
  expect(rowIn(book, first.disc!)!.throws).toBeLessThan(5);
});

test("not now passes a disc over until the others are through", () => {
  const skipped = { ...session, skipped: ["Slate putter"] };
  expect(progressOf(skipped, book, still).disc).not.toBe("Slate putter");
  expect(progressOf({ ...session, skipped: bagOf(book) }, book, still).disc).toBe("Slate putter");
});

test("a chosen disc goes before the order", () => {
  expect(progressOf({ ...session, chosen: "Rose mid" }, book, still).disc).toBe("Rose mid");
});

test("a throw carries the session's day, wind, rise and the player", () => {
  const windy = sessionFrom({ ...EMPTY_START, headwind: "4", rise: "-3" }, book.settings, TODAY);
  const entry = entryOf({ ...windy, carry: "301", offline: -2 }, "Rose mid", book.settings);
  expect(rowsFor(book.raw.throws!, [entry], book.settings)).toEqual([
    {
      Date: TODAY,
      Disc: "Rose mid",
      Carry: 301,
      Offline: -10,
      Headwind: 4,
      Rise: -3,
      Player: "Me",
    },
  ]);
});

test("what is not a carry is refused with a sentence", () => {
  for (const [carry, words] of [
    ["", "Carry is missing."],
    ["abc", "Carry: type a number, such as 12.5."],
    ["0", "Carry must be above 0."],
  ])
    expect(() => entryOf({ ...session, carry: carry! }, "Rose mid", book.settings)).toThrow(words);
});

test("rows of the day are those of this player, marked off or not", () => {
  const day = book.log.throws[0]!.day!;
  const rows = loggedRows({ ...session, day }, book);
  expect(rows.length).toBeGreaterThan(throwsOf({ ...session, day }, book).length);
  expect(rows.some(({ off }) => off)).toBe(true);
  expect(rows.every(({ was }) => was["Player"] === "Me")).toBe(true);
});

test("a carry far from the disc's own is asked about once; what no throw carries is refused", () => {
  const typed = (carry: string): Session => ({ ...session, carry });
  const bare = (text: string | null) => text?.replaceAll("\u00a0", " ");
  expect(doubtOf(typed("266"), book, "Copper mid")).toBeNull();
  expect(bare(doubtOf(typed("30"), book, "Copper mid"))).toMatch(
    /^30 ft is far from the 27\d ft of/,
  );
  const asked = { ...typed("30"), doubted: doubted(typed("30"), "Copper mid") };
  expect(doubtOf(asked, book, "Copper mid")).toBeNull();
  expect(doubtOf(asked, book, "Mint fairway")).not.toBeNull();
  expect(doubtOf(typed("30"), book, "never thrown")).toBeNull();
  expect(() => entryOf(typed("9999"), "Copper mid", book.settings)).toThrow(
    "farther than any throw",
  );
  expect(() => entryOf(typed("1"), "Copper mid", book.settings)).toThrow("shorter than any throw");
});
