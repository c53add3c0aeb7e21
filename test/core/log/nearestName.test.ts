import fc from "fast-check";
import { nearestName, slipsBetween } from "../../../src/core/log/nearestName";

const slips = (one: string, other: string): number => slipsBetween([...one], [...other]);

/** The examples that textbooks give for the distance of Levenshtein; common practice, no one source. */
test.each([
  ["kitten", "sitting", 3],
  ["saturday", "sunday", 3],
  ["flaw", "lawn", 2],
  ["", "abc", 3],
])("from '%s' to '%s' it takes %i slips", (one, other, count) => {
  expect(slips(one, other)).toBe(count);
});

/** What makes it a distance (a metric). Few letters, so that words share some. */
test("slips are a distance", () => {
  const word = fc.string({ unit: fc.constantFrom("a", "b", "c"), maxLength: 7 });
  fc.assert(
    fc.property(word, word, word, (one, two, three) => {
      expect(slips(one, two)).toBe(slips(two, one));
      expect(slips(one, two) === 0).toBe(one === two);
      expect(slips(one, three)).toBeLessThanOrEqual(slips(one, two) + slips(two, three));
    }),
  );
});

describe("the nearest name", () => {
  const names = ["Mint fairway", "Copper mid", "Copper mud", "D1"];

  test.each([
    ["Coper mid", "Copper mid"],
    ["copper  MUDD", "Copper mud"],
    ["Mitn fairway", "Mint fairway"],
    ["Copper mad", "Copper mid"],
  ])("of '%s' is '%s'", (name, nearest) => expect(nearestName(name, names)).toBe(nearest));

  test.each(["Copper", "Slate putter", "Mint fairies", "D2", ""])("of '%s' is none", (name) =>
    expect(nearestName(name, names)).toBeNull(),
  );
});
