/** The walk in the README is true: its figures are worked out here from the starter workbook. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import reviewed from "./reviewed/functions.json";
import { gaps } from "../src/core/bag/coverage";
import { twins } from "../src/core/bag/worth";
import { knownToM } from "../src/core/carry/needed";
import { rowOf } from "../src/core/carry/levelThrows";
import { readNotes } from "../src/core/notes/readNotes";
import { rankOptions } from "../src/core/choice/rank";
import { answerHole, fillFrom, pickOf, pickSentence, taskOf } from "../src/pane/hole/model";
import { length } from "../src/pane/words/figures";
import { bookOf, readRawBook } from "../src/pane/book/book";
import { starterBlueprint } from "../src/workbook/blueprint";
import { MemoryPort } from "./support/memoryPort";

const readme = readFileSync(join(__dirname, "../README.md"), "utf8").replace(/\s+/g, " ");
/** Shows what should be there; the whole README would say nothing. */
function expectSaid(sentence: string): void {
  const words = sentence.replace(/\s+/g, " ");
  expect(readme.includes(words) ? words : "not in the README").toBe(words);
}
const book = (async () => bookOf(await readRawBook(new MemoryPort(starterBlueprint()))))();

test("the pick at the first hole", async () => {
  const { holes, card, settings } = await book;
  const answer = answerHole(taskOf(fillFrom(holes[0]!, settings), settings), card, settings);
  if (!answer.options.ok || !answer.plays.ok) throw new Error("The first hole has no answer.");
  const options = answer.options.value;
  expectSaid(`${pickOf(options[0]!)}. ${pickSentence(options, settings)}`);
  const { parts, band } = answer.plays.value;
  const [distance, plays, low, high] = [parts.distanceM, parts.totalM, band.lowM, band.highM].map(
    (metres) => length(metres, settings.distanceUnit),
  );
  expectSaid(`${distance} ft; it plays like ${plays} ft, between ${low} and ${high}`);
});

test("how well the card knows two discs, and the one that changes", async () => {
  const { card } = await book;
  const known = (disc: string): string => length(knownToM(rowOf(card, disc)), "ft");
  expect(rowOf(card, "Copper mid").throws).toBe(10);
  expect(rowOf(card, "Olive mid").throws).toBe(1);
  expectSaid(`Copper mid was thrown ten times and is known to ± ${known("Copper mid")} ft`);
  expectSaid(`Olive mid was thrown once and is known to ± ${known("Olive mid")} ft`);
  expect(card.rows.filter(({ verdict }) => verdict === "changing").map(({ disc }) => disc)).toEqual(
    ["Indigo fairway"],
  );
});

test("the formula to type, without the bag", async () => {
  const { log, settings } = await book;
  const { makeCard } = await import("../src/core/carry/card");
  const task = { distanceM: 327 * 0.3048, riseM: 0, headwindMps: 0 };
  const [best] = rankOptions(task, makeCard(log, null, settings), settings);
  expectSaid("`=CARRY.BEST(327, Throws[#All], Settings)`");
  expectSaid(`It answers _${best!.disc}_.`);
});

test("no gap, and the twins", async () => {
  const { card, settings } = await book;
  expect(gaps(card, settings)).toEqual([]);
  expectSaid("what the bag lacks, here nothing");
  const [pair, ...more] = twins(card, settings);
  expect(more).toEqual([]);
  expectSaid(`${pair!.a} and ${pair!.b} are twins`);
});

test("every function is in the table", () => {
  const { functions } = reviewed;
  for (const { id } of functions) expectSaid(`\`${id}\``);
});

test("the notes", async () => {
  const { settings, bag } = await book;
  const text = /```\n(12 May[^`]+)```/.exec(
    readFileSync(join(__dirname, "../README.md"), "utf8"),
  )![1]!;
  const { rows, unread } = readNotes(text, bag, settings);
  expect(unread).toEqual([]);
  expect(rows.map(({ disc, line }) => [disc.toLowerCase(), line])).toEqual([
    ["mint fairway", ""],
    ["mint fairway", ""],
    ["mint fairway", "off"],
    ["copper mid", ""],
  ]);
  expect(rows[3]!.offlineM).toBeCloseTo(-10 * 0.3048, 10);
});
