import golden from "../golden/card.json";
import flight from "../golden/flight.json";
import { ask, loadFunctions } from "../support/customFunctions";

const functions = loadFunctions();
const call = (id: string, ...args: unknown[]): unknown => ask(functions.get(id), ...args);
const LOG = [golden.columns, ...golden.throws];
/** The outside values hold for a wind that has its full effect. */
const FULL_WIND = [["Tailwind factor", 1]];

describe("answers in cells equal values from outside", () => {
  test.each(Object.entries(golden.card))("SMOOTH and CARD of %s", (disc, row) => {
    expect(call("SMOOTH", disc, LOG)).toBeCloseTo(row.carry, 3);
    const printed = (call("CARD", LOG) as unknown[][]).find(([name]) => name === disc)!;
    const found = printed.slice(3, 7) as number[];
    [row.carry, row.low, row.high, row.spread].forEach((figure, at) =>
      expect(found[at]).toBeCloseTo(figure, 3),
    );
  });

  test.each(flight.rows)(
    "PLAYSLIKE of $distanceFt ft, rise $riseFt ft, headwind $headwindMph mph, $type",
    ({ distanceFt, riseFt, headwindMph, type, playsLikeFt }) => {
      const answered = call("PLAYSLIKE", distanceFt, riseFt, headwindMph, type, FULL_WIND);
      expect(Math.abs((answered as number) - playsLikeFt)).toBeLessThan(0.3);
    },
  );

  // Half of a 60-30-90 triangle: plane geometry.
  test("LEVEL and RISE of 200 at 30°", () => {
    expect(call("LEVEL", 200, 30)).toBeCloseTo(200 * Math.sqrt(0.75), 10);
    expect(call("RISE", 200, 30)).toBeCloseTo(100, 10);
  });

  // Plane geometry: a wind of 10 at 45° to the throw has 10/√2 along and 10/√2 across.
  test("HEADWIND and CROSSWIND of a north-west wind on a throw to the north", () => {
    expect(call("HEADWIND", 10, "NW", "N")).toBeCloseTo(10 * Math.SQRT1_2, 10);
    expect(call("CROSSWIND", 10, 315, 0)).toBeCloseTo(10 * Math.SQRT1_2, 10);
  });

  // ISO 2533 standard atmosphere: 1.111660 kg/m³ at 1000 m.
  test("AIR at 1000 m", () => {
    const settings = [
      ["Distances in", "m"],
      ["Altitude", 1000],
    ];
    expect(call("AIR", settings)).toBeCloseTo(1.11166 / 1.225, 4);
  });
});

describe("the three shapes of throws", () => {
  const card = call("CARD", LOG);

  test("a card answers as the log that it came from", () => {
    expect(call("BEST", 327, card)).toBe(call("BEST", 327, LOG));
    const [fromCard, fromLog] = [card, LOG].map((throws) =>
      call("OPTIONS", 327, throws, null, 12, 5),
    );
    (fromLog as unknown[][]).forEach((row, at) =>
      row.forEach((cell, column) => {
        const other = (fromCard as unknown[][])[at]![column];
        if (typeof cell === "number") expect(other).toBeCloseTo(cell, 6);
        else expect(other).toBe(cell);
      }),
    );
  });

  test("a bare list answers as a log with one throw a disc", () => {
    const list = [
      ["Copper mid", 301],
      ["Mint fairway", 352],
      ["Slate putter", 248],
    ];
    const log = [["Disc", "Carry"], ...list];
    expect(call("OPTIONS", 310, list)).toEqual(call("OPTIONS", 310, log));
  });

  test("metres in are metres out, for the same throw", () => {
    const inMetres = (feet: unknown): number => (feet as number) * 0.3048;
    const log = [["Disc", "Carry"], ...golden.throws.map(([disc, feet]) => [disc, inMetres(feet)])];
    const settings = [["Distances in", "m"]];
    const feetLog = [["Disc", "Carry"], ...golden.throws.map((row) => row.slice(0, 2))];
    const feet = call("SMOOTH", "Copper mid", feetLog);
    expect(call("SMOOTH", "Copper mid", log, settings)).toBeCloseTo(inMetres(feet), 9);
  });
});

describe("honest about thin data", () => {
  test("one throw each of 22 discs gives wide intervals and an answer for every hole", () => {
    const list = Array.from({ length: 22 }, (_, at) => [`Disc ${at + 1}`, 200 + 9 * at]);
    const card = call("CARD", list) as (string | number)[][];
    expect(card).toHaveLength(23);
    for (const [, , , carry, low, high] of card.slice(1) as number[][]) {
      expect((high! - low!) / carry!).toBeGreaterThan(0.2);
    }
    const course = [
      ["Hole", "Distance", "Rise"],
      [1, 260, 5],
      [2, 341, 0],
      [3, 215, -12],
    ];
    const plan = call("PLAN", course, list) as (string | number)[][];
    expect(plan).toHaveLength(4);
    for (const row of plan.slice(1)) {
      expect(row[4]).toMatch(/^Disc \d+$/);
      expect(row[7]).toBeGreaterThan(0.2);
      expect(row[7]).toBeLessThan(0.75);
    }
  });
});
