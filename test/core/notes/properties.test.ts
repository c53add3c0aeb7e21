/** What must hold for any notes. fast-check prints the seed of a failure. */
import fc from "fast-check";
import { editDistance, suggestDisc } from "../../../src/core/notes/noteRows";
import { readNotes } from "../../../src/core/notes/readNotes";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import type { BagDisc } from "../../../src/core/types";

const bag: BagDisc[] = ["Slate putter", "Copper mid", "Mint fairway"].map((disc, index) => ({
  row: index + 2,
  disc,
  type: null,
  line: "",
  softest: null,
  inBag: true,
}));

const word = fc.constantFrom(
  ..."copper mid|mint fairway|slate|ruby|skipped|left|right|L|r|x|?|off|and|hyzer|ft|m|,|;|-|/|:|%|(|)|🥏|\t|\n|in metres|\n12 May 2026\n|\n5/12/2026\n".split(
    "|",
  ),
);
const number = fc.integer({ min: 1, max: 999 });
const text = fc
  .array(fc.tuple(fc.oneof(word, number), fc.constantFrom("", " ", " ", " ")), { maxLength: 25 })
  .map((parts) => parts.flat().join(""));

test("no number is dropped: each is in a row, a note, a name, a date, or unread", () =>
  fc.assert(
    fc.property(text, (notes) => {
      const { rows, unread } = readNotes(notes, bag, DEFAULT_SETTINGS);
      const told = [
        ...rows.flatMap((row) =>
          [row.carryM, Math.abs(row.offlineM ?? 0)]
            .flatMap((m) => [m, m / 0.3048])
            .map((v) => v.toFixed(4)),
        ),
        ...rows.map((row) => (row.power * 100).toFixed(4)),
      ];
      const said = [
        ...unread.map((piece) => piece.text),
        ...rows.flatMap((r) => [r.note, r.disc]),
      ].join(" ");
      const dates = /\n(?:12 May 2026|5\/12\/2026)\n/g;
      // The numbers of a numbered list are not figures.
      const listNumbers = /^([^\p{L}\p{N}\n]*)\d{1,2}[.)](?=[^\S\n])/gmu;
      const figures = notes.replace(dates, " ").replace(listNumbers, "$1");
      for (const [digits] of figures.matchAll(/(?<![\d.,])\d+(?![\d.,])/g)) {
        const inRow = told.includes(Number(digits).toFixed(4));
        expect(inRow || said.includes(digits!)).toBe(true);
      }
    }),
    { numRuns: 1000 },
  ));

test("any text at all gives finite rows with a line, and reasons for the rest", () =>
  fc.assert(
    fc.property(fc.oneof(text, fc.string({ unit: "grapheme", maxLength: 80 })), (notes) => {
      const lines = notes.normalize("NFKC").split(/\r\n?|[\n\u2028\u2029]/).length;
      const { rows, unread } = readNotes(notes, bag, DEFAULT_SETTINGS);
      for (const row of rows) {
        expect(row.carryM).toBeGreaterThan(0);
        expect(row.carryM).toBeLessThanOrEqual(500);
        expect(row.offlineM === null || Math.abs(row.offlineM) <= row.carryM).toBe(true);
        expect(row.disc).not.toBe("");
        expect(row.fromLine).toBeGreaterThanOrEqual(1);
        expect(row.fromLine).toBeLessThanOrEqual(lines);
      }
      for (const { reason, text: piece } of unread) {
        expect(reason).not.toBe("");
        expect(piece).not.toBe("");
      }
    }),
    { numRuns: 1000 },
  ));

describe("suggestions", () => {
  // Levenshtein's own examples and a swap (Damerau 1964): computed by hand.
  test.each([
    ["kitten", "sitting", 3],
    ["copper", "coper", 1],
    ["mint", "mnit", 1],
    ["", "abc", 3],
    ["same", "same", 0],
  ])("%s to %s takes %d", (one, other, steps) => {
    expect(editDistance(one, other)).toBe(steps);
    expect(editDistance(other, one)).toBe(steps);
  });

  test("none where two discs are equally near, or none is near", () => {
    const two = [...bag, { ...bag[1]!, disc: "Copper max" }];
    expect(suggestDisc("copper", two)).toBeNull();
    expect(suggestDisc("violet driver", bag)).toBeNull();
    expect(suggestDisc("", [])).toBeNull();
  });

  test("one slip in a name is always seen through", () =>
    fc.assert(
      fc.property(fc.constantFrom(...bag), fc.nat(), (disc, at) => {
        const place = at % disc.disc.length;
        const slipped = disc.disc.slice(0, place) + disc.disc.slice(place + 1);
        expect(suggestDisc(slipped, bag)).toBe(disc.disc);
      }),
    ));
});
