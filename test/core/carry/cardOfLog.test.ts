/** What the small golden log does not show: ageing, sideways, the bag, slope and wind, five discs. */
import * as simple from "simple-statistics";
import { makeCard } from "../../../src/core/carry/card";
import { readCard } from "../../../src/core/carry/cardCells";
import { rowOf } from "../../../src/core/carry/levelThrows";
import { conditionsOf } from "../../../src/core/flight/air";
import { playsLikeM } from "../../../src/core/flight/playsLike";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readBag } from "../../../src/core/log/readBag";
import { readThrows } from "../../../src/core/log/readThrows";

const FT = 0.3048; // NIST SP 811, exact
const HEADER = ["Date", "Disc", "Carry", "Offline", "Power", "Line", "Headwind", "Rise"];
const cardOf = (rows: unknown[][], settings = DEFAULT_SETTINGS, bag: unknown[][] = []) =>
  readCard([HEADER, ...rows], readBag(bag), settings);
const carryFt = (rows: unknown[][], settings = DEFAULT_SETTINGS): number =>
  Math.exp(rowOf(cardOf(rows, settings), "Copper mid").mu) / FT;

describe("ageing", () => {
  const rows = [
    [46000, "Copper mid", 290],
    [46180, "Copper mid", 300],
  ];

  test("a throw counts half after the memory: 290 at weight ½ and 300 at 1", () => {
    const expected = Math.exp((0.5 * Math.log(290) + Math.log(300)) / 1.5);
    expect(carryFt(rows)).toBeCloseTo(expected, 9);
  });

  test("evidence is the effective number, (1.5)²/1.25", () => {
    expect(rowOf(cardOf(rows), "Copper mid").evidence).toBeCloseTo(1.8, 12);
  });

  test("without memory both count alike", () => {
    const forever = { ...DEFAULT_SETTINGS, memoryDays: Infinity };
    expect(carryFt(rows, forever)).toBeCloseTo(Math.sqrt(290 * 300), 9);
  });

  test("the newest throw of any disc is the day to count from, unless As of says another", () => {
    const later = [...rows, [46360, "Mint fairway", 350]];
    expect(carryFt(later)).toBeCloseTo(carryFt(rows), 9);
    const asOf = { ...DEFAULT_SETTINGS, asOfDay: 46000 };
    expect(carryFt(rows, asOf)).toBeCloseTo(Math.sqrt(290 * 300), 9);
  });

  test("throws without a date have age 0", () => {
    const dateless = rows.map(([, ...rest]) => ["", ...rest]);
    expect(carryFt(dateless)).toBeCloseTo(Math.sqrt(290 * 300), 9);
  });
});

describe("sideways", () => {
  const offlines = [-10, 5, 20, 12];
  const rows = offlines.map((offline) => ["", "Copper mid", 300, offline]);
  const { side } = rowOf(cardOf(rows), "Copper mid");
  const angles = offlines.map((offline) => Math.atan2(offline, 300));

  test("bias is shrunk by one straight throw", () => {
    expect(side.throws).toBe(4);
    expect(side.biasRad).toBeCloseTo(simple.sum(angles) / 5, 12);
  });

  test("spread is pooled with the usual one and widened for the next throw", () => {
    const variance = (4 * 0.06 ** 2 + 3 * simple.sampleVariance(angles)) / 7;
    expect(side.scaleRad).toBeCloseTo(Math.sqrt(variance * (1 + 1 / 4)), 12);
    expect(side.freedom).toBe(7);
  });

  test("one noted miss tells the bias only; none tells nothing", () => {
    const one = rowOf(cardOf(rows.slice(0, 1)), "Copper mid").side;
    expect(one).toEqual({ biasRad: angles[0]! / 2, scaleRad: 0.06, freedom: 4, throws: 1 });
    const none = rowOf(cardOf([["", "Copper mid", 300]]), "Copper mid").side;
    expect(none).toEqual({ biasRad: 0, scaleRad: 0.06, freedom: 4, throws: 0 });
  });
});

describe("level, calm and smooth", () => {
  test("a throw at 90 % tells of a smooth one a ninth longer", () => {
    expect(carryFt([["", "Copper mid", 270, "", 0.9]])).toBeCloseTo(300, 9);
  });

  test("slope and wind count as the plays-like distance of the carry, for the disc's own type", () => {
    const bag = [
      ["Disc", "Type"],
      ["Copper mid", "midrange"],
    ];
    const card = cardOf([["", "Copper mid", 270, "", "", "", 6, 10]], DEFAULT_SETTINGS, bag);
    const shot = { distanceM: 270 * FT, riseM: 10 * FT, headwindMps: 6 * 0.44704 };
    const expected = playsLikeM(shot, conditionsOf(DEFAULT_SETTINGS), "midrange");
    // The flight's curve stays within 0.05 ft of the exact answer.
    expect(Math.abs(Math.exp(card.rows[0]!.mu) - expected) / FT).toBeLessThan(0.05);
  });

  test("a throw that the flight cannot level is left out, and counted so", () => {
    const card = cardOf([
      ["", "Copper mid", 270, "", "", "", 900, ""],
      ["", "Copper mid", 300],
    ]);
    expect(card.leftOut).toEqual([
      { row: 2, disc: "Copper mid", reason: expect.stringMatching(/^Row 2: .*level, calm air/) },
    ]);
    expect(card.rows[0]).toMatchObject({ throws: 1, leftOut: 1 });
  });
});

describe("the bag and the rows left out", () => {
  const card = cardOf(
    [
      ["", "copper MID", 300],
      ["", "Copper  mid", "abc"],
      ["", "Mint fairway", 350, "", "", "off"],
      ["", "Violet driver", 400],
    ],
    DEFAULT_SETTINGS,
    [
      ["Disc", "Type", "Line", "In bag"],
      ["Copper mid", "mid", "hyzer", "no"],
    ],
  );

  test("longest first; type, line and place from the bag; unlisted discs are along", () => {
    expect(card.rows).toEqual([
      expect.objectContaining({ disc: "Violet driver", type: null, line: "", inBag: true }),
      expect.objectContaining({
        disc: "Copper mid",
        type: "midrange",
        line: "hyzer",
        inBag: false,
        leftOut: 1,
      }),
    ]);
  });

  test("rows left out in order, and their reason when the disc is asked for", () => {
    expect(card.leftOut.map(({ row }) => row)).toEqual([3, 4]);
    expect(() => rowOf(card, "mint FAIRWAY")).toThrow("Row 4: marked off.");
    expect(() => rowOf(card, "Slate putter")).toThrow(/^No throw of 'Slate putter' counts\.$/);
  });

  test("a slip in the name is pointed out", () => {
    expect(() => rowOf(card, "Coper mid")).toThrow(
      /^No throw of 'Coper mid' counts\. Did you mean 'Copper mid'\?$/,
    );
  });
});

describe("a log of two players", () => {
  const cells = [
    ["Disc", "Carry", "Player"],
    ["Copper mid", 300, "Ana"],
    ["Copper mid", "far", "Ana"],
    ["Copper mid", 250, "Ben"],
    ["Copper mid", "far", "Ben"],
    ["Mint fairway", 350, "Ben"],
  ];

  test("gives a card of the chosen one, whose rows alone are left out", () => {
    const card = readCard(cells, null, { ...DEFAULT_SETTINGS, player: "Ana" });
    expect(card.rows).toEqual([
      expect.objectContaining({ disc: "Copper mid", throws: 1, leftOut: 1 }),
    ]);
    expect(() => rowOf(card, "Mint fairway")).toThrow("Row 6: thrown by Ben.");
  });

  test("gives none without a choice", () => {
    expect(() => readCard(cells, null, DEFAULT_SETTINGS)).toThrow("Ana and Ben");
  });
});

// Smyth 2004 by moments of ln s², stated again from closed forms:
// five discs with equal weights, so that s² is the plain sample variance about the mean.
test("from five discs on the bag tells the prior itself", () => {
  const deltas = [0.01, 0.02, 0.03, 0.05, 0.08];
  const rows = deltas.flatMap((delta, disc) =>
    [-1, 0, 1].map((k) => ["", `Disc ${disc}`, 300 * Math.exp(k * delta)]),
  );
  const { population, rows: found } = cardOf(rows);
  // ψ and ψ′ at 1 (three throws: f/2 = 1): closed forms, NIST DLMF 5.4.12 and 5.15.1.
  const logs = deltas.map((delta) => Math.log(delta ** 2) + 0.5772156649015329);
  const between = simple.sampleVariance(logs) - Math.PI ** 2 / 6;
  expect(between).toBeGreaterThan(0);
  const d0 = population.freedom;
  // ψ′(d0/2) = between, by its series Σ 1/(x + k)² summed far out with the integral of the rest.
  let trigamma = 0;
  for (let k = 0; k < 1e5; k++) trigamma += 1 / (d0 / 2 + k) ** 2;
  trigamma += 1 / (d0 / 2 + 1e5 - 0.5);
  expect(trigamma).toBeCloseTo(between, 8);
  for (const row of found) expect(row.freedom).toBeCloseTo(d0 + 2, 9);
});

test("no throws: no rows, and the usual spread", () => {
  expect(makeCard(readThrows([], DEFAULT_SETTINGS), null, DEFAULT_SETTINGS)).toEqual({
    rows: [],
    population: { scale: 0.07, freedom: 4 },
    leftOut: [],
  });
});
