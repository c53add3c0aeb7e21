/** What must hold for any log. fast-check prints the seed of a failure. */
import fc from "fast-check";
import { DomainError } from "../../../src/core/errors";
import { cardCells, readCard } from "../../../src/core/carry/cardCells";
import { neededThrows } from "../../../src/core/carry/needed";
import { trendOf } from "../../../src/core/carry/wear";
import { DEFAULT_SETTINGS, readSettings } from "../../../src/core/log/readSettings";
import { readBag } from "../../../src/core/log/readBag";
import { readCourse } from "../../../src/core/log/readCourse";
import { readRounds } from "../../../src/core/log/readRounds";
import { readThrows, throwFault, throwLayout } from "../../../src/core/log/readThrows";
import type { Card } from "../../../src/core/types";

const HEADER = ["Disc", "Carry", "Date", "Offline"];
const disc = fc.constantFrom(
  "Copper mid",
  "Mint fairway",
  "Slate putter",
  "Rose mid",
  "Lemon driver",
  "Plum driver",
);
const row = fc.tuple(
  disc,
  fc.integer({ min: 120, max: 450 }),
  fc.oneof(fc.integer({ min: 46000, max: 46400 }), fc.constant("" as const)),
  fc.oneof(fc.integer({ min: -60, max: 60 }), fc.constant("" as const)),
);
const rows = fc.array(row, { minLength: 1, maxLength: 60 });
const cardOf = (body: readonly (readonly unknown[])[], settings = DEFAULT_SETTINGS): Card =>
  readCard([HEADER, ...body], null, settings);

/** Every number of the two cards agrees to a relative 1e-9, row by row. */
function expectSame(one: Card, other: Card): void {
  const figures = (card: Card) =>
    [...card.rows]
      .sort((a, b) => (a.disc < b.disc ? -1 : 1))
      .map((r) => [
        r.mu,
        r.scale,
        r.freedom,
        r.evidence,
        r.side.biasRad,
        r.side.scaleRad,
        r.throws,
      ]);
  const [a, b] = [figures(one).flat(), figures(other).flat()];
  expect(a).toHaveLength(b.length);
  a.forEach((value, i) =>
    expect(Math.abs(value - b[i]!)).toBeLessThan(1e-9 * (1 + Math.abs(value))),
  );
}

describe("the card of any log", () => {
  test("does not depend on the order of rows", () =>
    fc.assert(
      fc.property(rows, fc.infiniteStream(fc.nat()), (body, keys) => {
        const shuffled = body
          .map((cells) => ({ cells, key: keys.next().value as number }))
          .sort((a, b) => a.key - b.key)
          .map(({ cells }) => cells);
        expectSame(cardOf(body), cardOf(shuffled));
      }),
    ));

  test("does not depend on the unit: metres written as metres give the same", () =>
    fc.assert(
      fc.property(rows, (body) => {
        const metres = body.map(([name, carry, date, offline]) => [
          name,
          carry * 0.3048,
          date,
          offline === "" ? "" : offline * 0.3048,
        ]);
        expectSame(cardOf(body), cardOf(metres, { ...DEFAULT_SETTINGS, distanceUnit: "m" }));
      }),
    ));

  test("moves with its carries: all times k moves every centre by ln k and no spread", () =>
    fc.assert(
      fc.property(rows, fc.double({ min: 0.5, max: 2, noNaN: true }), (body, k) => {
        const level = body.map(([name, carry, date]) => [name, carry, date, ""]);
        const card = cardOf(level);
        const moved = cardOf(
          level.map(([name, carry, ...rest]) => [name, (carry as number) * k, ...rest]),
        );
        expectSame(
          { ...card, rows: card.rows.map((r) => ({ ...r, mu: r.mu + Math.log(k) })) },
          moved,
        );
      }),
    ));

  test("does not depend on when it all happened: days shifted alike give the same", () =>
    fc.assert(
      fc.property(rows, fc.integer({ min: -3000, max: 3000 }), (body, shift) => {
        const shifted = body.map(([name, carry, date, offline]) => [
          name,
          carry,
          date === "" ? "" : date + shift,
          offline,
        ]);
        expectSame(cardOf(body), cardOf(shifted));
      }),
    ));

  test("mirrors: left for right turns the bias and nothing else", () =>
    fc.assert(
      fc.property(rows, (body) => {
        const mirrored = body.map(([name, carry, date, off]) => [
          name,
          carry,
          date,
          off === "" ? "" : -off,
        ]);
        const card = cardOf(body);
        const turned = card.rows.map((r) => ({
          ...r,
          side: { ...r.side, biasRad: -r.side.biasRad },
        }));
        expectSame({ ...card, rows: turned }, cardOf(mirrored));
      }),
    ));

  test("centres lie within their carries; spreads and evidence are sound", () =>
    fc.assert(
      fc.property(rows, (body) => {
        for (const r of cardOf(body).rows) {
          const own = body
            .filter(([name]) => name === r.disc)
            .map(([, carry]) => Math.log(carry * 0.3048));
          expect(r.mu).toBeGreaterThanOrEqual(Math.min(...own) - 1e-12);
          expect(r.mu).toBeLessThanOrEqual(Math.max(...own) + 1e-12);
          expect(r.scale).toBeGreaterThan(0);
          expect(r.evidence).toBeGreaterThanOrEqual(1);
          expect(r.evidence).toBeLessThanOrEqual(own.length + 1e-9);
          expect(r.throws).toBe(own.length);
        }
      }),
    ));

  test("a wilder throw pulls no harder than Huber lets it", () =>
    fc.assert(
      fc.property(
        fc.integer({ min: 5, max: 20 }),
        fc.integer({ min: 400, max: 1200 }),
        (count, wild) => {
          const steady = Array.from({ length: count }, () => ["Copper mid", 300, "", ""]);
          const mu = (body: unknown[][]) => cardOf(body).rows[0]!.mu;
          const pulled = mu([...steady, ["Copper mid", wild, "", ""]]) - mu(steady);
          expect(pulled).toBeLessThanOrEqual((1.345 * 0.07) / count + 1e-12);
        },
      ),
    ));

  test("is read back from its printed form", () =>
    fc.assert(
      fc.property(rows, (body) => {
        const card = cardOf(body);
        expectSame(card, {
          ...card,
          rows: readCard(cardCells(card, DEFAULT_SETTINGS), null, DEFAULT_SETTINGS).rows,
        });
      }),
      { numRuns: 40 },
    ));

  test("needs no more throws for a wider margin", () =>
    fc.assert(
      fc.property(rows, fc.double({ min: 1, max: 10, noNaN: true }), (body, marginM) => {
        for (const r of cardOf(body).rows)
          expect(neededThrows(r, marginM * 1.5)).toBeLessThanOrEqual(neededThrows(r, marginM));
      }),
      { numRuns: 30 },
    ));

  test("leaves its input as it was", () => {
    const frozen = Object.freeze([
      Object.freeze(HEADER),
      Object.freeze(["Copper mid", 301, 46000, 5]),
      Object.freeze(["Copper mid", "abc", 46000, 5]),
    ]);
    expect(() =>
      readCard(frozen, Object.freeze([]), Object.freeze({ ...DEFAULT_SETTINGS })),
    ).not.toThrow();
  });
});

/** Anything that a spreadsheet can send as a cell. */
const anyCell = fc.oneof(
  {
    weight: 3,
    arbitrary: fc.constantFrom<unknown>("", null, undefined, 0, true, false, NaN, Infinity, -0),
  },
  { weight: 3, arbitrary: fc.double() },
  { weight: 3, arbitrary: fc.integer({ min: -100, max: 500 }) },
  { weight: 2, arbitrary: fc.string() },
  { weight: 1, arbitrary: fc.string({ unit: "grapheme", maxLength: 255 }) },
  {
    weight: 2,
    arbitrary: fc.constantFrom<unknown>(
      "Disc",
      "Carry",
      "Low",
      "Distance",
      "Finish",
      "Putting",
      "Player",
      "Copper mid",
      "301",
      "3,5",
      "__proto__",
      "constructor",
      "off",
      "2026-05-12",
      { error: "#REF!" },
      { code: "#N/A", message: "" },
      { basicType: "Error", basicValue: "#DIV/0!" },
      { basicType: "Double", basicValue: 301 },
      [[301]],
      [],
      {},
    ),
  },
);
const anyCells = fc.array(fc.array(anyCell, { maxLength: 6 }), { maxLength: 12 });
const anyLog = anyCells.map((cells) => [
  ["Disc", "Carry", "Power", "Date", "Offline", "Line"],
  ...cells,
]);
const anyCard = anyCells.map((cells) => [
  ["Disc", "Carry", "High", "Known to", "Spread", "Side"],
  ...cells,
]);

/** What a reader answers, or its DomainError; any other error fails the test. */
function askedOf<T>(ask: () => T): T | DomainError {
  try {
    return ask();
  } catch (thrown) {
    if (thrown instanceof DomainError && thrown.message.length > 10) return thrown;
    throw thrown;
  }
}

function expectFinite(card: Card): void {
  for (const cell of cardCells(card, DEFAULT_SETTINGS).flat())
    expect(typeof cell === "string" || Number.isFinite(cell)).toBe(true);
  for (const { reason, row: at } of card.leftOut) expect(reason).toContain(`Row ${at}: `);
}

describe("anything a spreadsheet can send", () => {
  test.each([
    ["a log", anyLog],
    ["a card", anyCard],
    ["any range", anyCells],
  ])("%s gives a finite card or an error in words", (_, cells) =>
    fc.assert(
      fc.property(cells, (found) => {
        const card = askedOf(() => readCard(found, null, DEFAULT_SETTINGS));
        if (!(card instanceof DomainError)) expectFinite(card);
      }),
      { numRuns: 400 },
    ),
  );

  test("every row of a log is a throw, left out, or blank", () =>
    fc.assert(
      fc.property(anyLog, (cells) => {
        const { throws, leftOut } = readThrows(cells, DEFAULT_SETTINGS, "everyone");
        const layout = throwLayout(cells, "log", DEFAULT_SETTINGS);
        for (const { row: at } of throws)
          expect(throwFault(cells[at - 1]!, at, layout, false)).toBeNull();
        const met = [...throws, ...leftOut].map(({ row: at }) => at);
        expect(new Set(met).size).toBe(met.length);
        expect(throws.length + leftOut.length).toBeLessThan(cells.length);
      }),
      { numRuns: 400 },
    ));

  test("settings, bag, course, rounds and trends answer or say what is wrong", () =>
    fc.assert(
      fc.property(anyCells, (cells) => {
        askedOf(() => readSettings(cells));
        askedOf(() => readBag(cells));
        askedOf(() => readCourse(cells, DEFAULT_SETTINGS));
        askedOf(() => readRounds(cells, DEFAULT_SETTINGS));
        askedOf(() => trendOf("Copper mid", readThrows(cells, DEFAULT_SETTINGS), DEFAULT_SETTINGS));
      }),
      { numRuns: 400 },
    ));
});
