import fc from "fast-check";
import { contentKey } from "../../src/functions/contentKey";

const cell = fc.oneof(
  fc.string(),
  fc.double({ noNaN: true }),
  fc.boolean(),
  fc.constant(null),
  fc.record({ basicValue: fc.integer() }),
);
const grid = fc.array(fc.array(cell, { minLength: 2, maxLength: 2 }), {
  minLength: 1,
  maxLength: 9,
});
const copyOf = <T>(value: T): T => structuredClone(value);

describe("the key of a range's content", () => {
  test("equal content has one key", () =>
    fc.assert(fc.property(grid, (cells) => contentKey(cells) === contentKey(copyOf(cells)))));

  test("a change of any cell changes the key", () =>
    fc.assert(
      fc.property(grid, fc.nat(), fc.nat(1), cell, (cells, pickRow, column, becomes) => {
        const row = pickRow % cells.length;
        fc.pre(JSON.stringify(cells[row]![column]) !== JSON.stringify(becomes));
        const changed = copyOf(cells);
        changed[row]![column] = becomes;
        return contentKey(changed) !== contentKey(cells);
      }),
    ));

  test("texts of one length differ by what they say", () =>
    expect(contentKey([["Wind in", "mph"]])).not.toBe(contentKey([["Wind in", "m/s"]])));

  test("the same cells in another shape have another key", () =>
    expect(contentKey([[1, 2]])).not.toBe(contentKey([[1], [2]])));

  test("text and number that look alike differ", () =>
    expect(contentKey([["1"]])).not.toBe(contentKey([[1]])));

  test("two rows that swap places differ", () =>
    expect(
      contentKey([
        ["a", 1],
        ["b", 2],
      ]),
    ).not.toBe(
      contentKey([
        ["b", 2],
        ["a", 1],
      ]),
    ));

  test("an array that is not frozen is looked at again after a change", () => {
    const cells = [["Copper mid", 301]];
    const before = contentKey(cells);
    cells[0]![1] = 302;
    expect(contentKey(cells)).not.toBe(before);
  });
});
