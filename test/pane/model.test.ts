/** What the places work out before anything is drawn. */
import { coveredOf, ladderOf, rungsOf } from "../../src/pane/bag/model";
import { type Book, keepUnchanged, readRawBook } from "../../src/pane/book/book";
import { type Planned, totalsOf } from "../../src/pane/course/model";
import { dotsOf } from "../../src/pane/field/model";
import { flightSide } from "../../src/pane/hole/model";
import { reportSentence } from "../../src/pane/setup/actions";
import { isEmpty, starterRows } from "../../src/pane/setup/model";
import { mergingOf, textCard } from "../../src/pane/share/model";
import { EMPTY_SHARE } from "../../src/pane/forms";
import { emptyBook, starterBook, starterPort } from "./starterBook";

let book: Book;
let bare: Book;
beforeAll(async () => {
  [book, bare] = [await starterBook(), await emptyBook()];
});

test("the ladder holds the discs in the bag, longest first, all within the plot", () => {
  const rungs = rungsOf(book);
  const carries = rungs.map(({ next }) => next.carryM);
  expect(carries).toEqual([...carries].sort((a, b) => b - a));
  expect(rungs.every(({ row }) => row.inBag)).toBe(true);
  const { x, width, ys, height } = ladderOf(rungs, 318, 0.3048);
  for (const { next, dots } of rungs)
    for (const metres of [next.lowM, next.highM, ...dots.map(({ carryM }) => carryM)]) {
      expect(x(metres / 0.3048)).toBeGreaterThanOrEqual(0);
      expect(x(metres / 0.3048)).toBeLessThanOrEqual(width);
    }
  expect(Math.max(...ys)).toBeLessThan(height);
});

test("a disc has as many dots as throws that count, and a calm one stands at its carry", () => {
  const dots = dotsOf(book, " copper  MID ");
  expect(dots).toHaveLength(book.card.rows.find(({ disc }) => disc === "Copper mid")!.throws);
  const calm = dots.find(
    ({ thrown }) => thrown.headwindMps === 0 && thrown.riseM === 0 && thrown.power === 1,
  )!;
  expect(calm.carryM).toBeCloseTo(calm.thrown.carryM, 9);
});

test("coverage says why there is none for an empty bag", () => {
  expect(coveredOf(bare)).toMatchObject({ ok: false });
});

test("the plot of a flight holds path, slope and circle, in the right order", () => {
  const shot = { distanceM: 100, riseM: 10, headwindMps: 0 };
  const path = [
    { alongM: 0, heightM: 1.3, sideM: 0, timeS: 0 },
    { alongM: 60, heightM: 15, sideM: 0, timeS: 2 },
    { alongM: 100, heightM: 10, sideM: 0, timeS: 4 },
  ];
  const side = flightSide(shot, path, 10, 318);
  expect(side.apex.alongM).toBe(60);
  const [near, far] = side.circle;
  const landing = side.points.at(-1)!;
  expect(near.x).toBeLessThan(landing.x);
  expect(far.x).toBeGreaterThan(landing.x);
  expect(far.y).toBeLessThan(near.y);
  // The landing lies on the slope, half way between the edges of the circle.
  expect(landing.y).toBeCloseTo((near.y + far.y) / 2, 9);
  for (const { y } of side.points) {
    expect(y).toBeGreaterThanOrEqual(0);
    expect(y).toBeLessThanOrEqual(side.height);
  }
});

const planned = (par: number | null, strokes: number | null): Planned =>
  ({ hole: { par }, plan: { option: strokes === null ? null : { strokes } } }) as Planned;

test("totals count the holes that have an answer", () => {
  const entries = [planned(3, 2.5), planned(4, 3.25), planned(5, null)];
  expect(totalsOf(entries)).toEqual({ holes: 3, answered: 2, strokes: 5.75, par: 7 });
  expect(totalsOf([planned(null, 2.5)]).par).toBeNull();
  expect(totalsOf([])).toEqual({ holes: 0, answered: 0, strokes: 0, par: 0 });
});

test("the text card names every disc once, in straight columns", () => {
  const lines = textCard(book).split("\n").slice(3);
  expect(lines).toHaveLength(rungsOf(book).length);
  const brackets = lines.map((line) => line.indexOf("("));
  expect(new Set(brackets).size).toBe(1);
  expect(textCard(bare)).toBe("");
});

const pasted = (text: string, part: object = {}) =>
  mergingOf({ ...EMPTY_SHARE, partner: "Neighbour", text, ...part }, book);

test("a partner's rows come in whatever they call themselves there", () => {
  const merging = pasted("Disc,Carry,Player\nCopper mid,280,Me too\nMint fairway,310,Me too");
  expect(merging).toMatchObject({ ok: true, value: { already: 0, leftOut: [] } });
  if (merging?.ok)
    expect(merging.value.add.map(({ Player }) => Player)).toEqual(["Neighbour", "Neighbour"]);
});

test("a partner's metres become our feet", () => {
  const merging = pasted("Disc\tCarry\nCopper mid\t100", { distanceUnit: "m" });
  expect(merging?.ok && merging.value.add[0]!["Carry"]).toBeCloseTo(328.08, 2);
});

test("merging says what is missing, and nothing before there is anything to read", () => {
  expect(pasted("")).toBeNull();
  expect(pasted("Disc\tCarry\nCopper mid\t280", { partner: "" })).toMatchObject({ ok: false });
  expect(pasted("hello")).toMatchObject({ ok: false });
});

test("starter rows are offered for empty tables only", () => {
  const { throws, bag, course, results, putts } = bare.raw;
  expect(starterRows([throws, bag, course, results, putts]).map(({ table }) => table)).toEqual([
    "Throws",
    "Bag",
    "Course",
    "Results",
    "Putts",
  ]);
  expect(starterRows([book.raw.throws, bag]).map(({ table }) => table)).toEqual(["Bag"]);
  expect([isEmpty(bag!), isEmpty(book.raw.bag!)]).toEqual([true, false]);
});

test("the report of a build says what was made and what was left", () => {
  expect(reportSentence({ made: ["Log", "Card"], kept: ["Discs"] })).toBe(
    "Made Log and Card. Left as it was: Discs.",
  );
  expect(reportSentence({ made: [], kept: ["Discs"] })).toContain("Nothing was changed");
});

test("a reading keeps what did not change", async () => {
  const port = starterPort();
  const before = await readRawBook(port);
  expect(keepUnchanged(before, await readRawBook(port))).toBe(before);
  port.edit("Bag", 0, "Note", "new");
  const after = keepUnchanged(before, await readRawBook(port));
  expect(after.bag).not.toBe(before.bag);
  expect(after.throws).toBe(before.throws);
});
