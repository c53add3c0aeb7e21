import { doubles } from "../../src/pane/book/newThrows";
import { starterBook, thrown } from "./starterBook";

test("a throw is a double where player, date, disc, carry and note agree", async () => {
  const book = await starterBook();
  const first = book.log.throws[0]!;
  expect(doubles([first], book)).toEqual([true]);
  const others = [
    { ...first, carryM: first.carryM + 1 },
    { ...first, disc: "Other disc" },
    { ...first, day: first.day! + 1 },
    { ...first, note: "another" },
    { ...first, player: "Partner" },
  ];
  expect(doubles(others, book)).toEqual(others.map(() => false));
});

test("case and spaces of the name, power, line, wind and rise do not matter", async () => {
  const book = await starterBook();
  const first = book.log.throws[0]!;
  const same = { ...first, disc: ` ${first.disc.toUpperCase()} `, riseM: 3, headwindMps: 1 };
  expect(doubles([same], book)).toEqual([true]);
});

test("the same carry twice is a double only as often as the log has it", async () => {
  const book = await starterBook();
  const first = book.log.throws[0]!;
  expect(doubles([first, first, first], book).filter(Boolean)).toHaveLength(
    book.log.throws.filter(
      ({ disc, carryM, day, note }) =>
        disc === first.disc && carryM === first.carryM && day === first.day && note === first.note,
    ).length,
  );
});

test("without a log nothing is a double", async () => {
  const book = await starterBook();
  expect(doubles([thrown({})], { ...book, raw: { ...book.raw, throws: null } })).toEqual([false]);
});
