import { cardCells, readCard } from "../../../src/core/carry/cardCells";
import { rowOf } from "../../../src/core/carry/levelThrows";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readBag } from "../../../src/core/log/readBag";
import type { Settings } from "../../../src/core/types";

const LOG = [
  ["Date", "Disc", "Carry", "Offline"],
  [46000, "Slate putter", 248, -4],
  [46000, "Slate putter", 255, ""],
  [46030, "Slate putter", 241, 9],
  [46000, "Copper mid", 301, 0],
  [46000, "Copper mid", 287, ""],
  [46030, "Copper mid", 315, -12],
  [46060, "Copper mid", 296, 3],
  [46000, "Mint fairway", 352, ""],
  [46030, "Mint fairway", 290, ""],
  ["", "Sand approach", 205, 8],
];
const MORE = ["Violet driver", "Lemon driver", "Rose mid"].flatMap((disc, d) =>
  Array.from({ length: 40 }, (_, i) => [
    46000 + 3 * i,
    disc,
    330 + 20 * d + 17 * Math.sin(i * i),
    "",
  ]),
);
const relative = (found: number, expected: number): number =>
  Math.abs(found - expected) / Math.max(1e-3, Math.abs(expected));

describe("a printed card is read back", () => {
  test.each([
    ["in feet, with the usual prior", LOG, DEFAULT_SETTINGS],
    ["in metres", LOG, { ...DEFAULT_SETTINGS, distanceUnit: "m" }],
    ["with a prior that the bag told", [...LOG, ...MORE], DEFAULT_SETTINGS],
  ] as [string, unknown[][], Settings][])("%s", (_, cells, settings) => {
    const card = readCard(cells, null, settings);
    const again = readCard(cardCells(card, settings), null, settings);
    expect(again.leftOut).toEqual([]);
    expect(again.rows.map(({ disc }) => disc)).toEqual(card.rows.map(({ disc }) => disc));
    card.rows.forEach((row, index) => {
      const found = again.rows[index]!;
      for (const figure of ["mu", "scale", "freedom", "evidence"] as const)
        expect(relative(found[figure], row[figure])).toBeLessThan(1e-9);
      for (const figure of ["biasRad", "scaleRad", "freedom", "throws"] as const)
        expect(relative(found.side[figure], row.side[figure])).toBeLessThan(1e-9);
      const { throws, leftOut, lastDay, verdict, type, line } = row;
      expect(found).toMatchObject({ throws, leftOut, lastDay, verdict, type, line, inBag: true });
    });
    expect(relative(again.population.freedom, card.population.freedom)).toBeLessThan(1e-9);
  });

  test("with the spread of the population, where the usual prior was pooled", () => {
    const card = readCard(LOG, null, DEFAULT_SETTINGS);
    const again = readCard(cardCells(card, DEFAULT_SETTINGS), null, DEFAULT_SETTINGS);
    expect(relative(again.population.scale, card.population.scale)).toBeLessThan(1e-9);
  });

  test("with the bag's type, line and place where a bag is given", () => {
    const bag = readBag([
      ["Disc", "Type", "Line", "In bag"],
      ["copper mid", "midrange", "hyzer", "no"],
    ]);
    const printed = cardCells(readCard(LOG, null, DEFAULT_SETTINGS), DEFAULT_SETTINGS);
    const { disc, type, line, inBag } = rowOf(
      readCard(printed, bag, DEFAULT_SETTINGS),
      "Copper mid",
    );
    expect([disc, type, line, inBag]).toEqual(["Copper mid", "midrange", "hyzer", false]);
  });
});

describe("the cells", () => {
  const card = readCard(LOG, null, DEFAULT_SETTINGS);
  const cells = cardCells(card, DEFAULT_SETTINGS);

  test("have the headers that files rely on", () => {
    expect(cells[0]).toEqual(
      (
        "Disc,Type,Line,Carry,Low,High,Spread,Side,Aim,Known to,Throws,Left out,Last,Trend," +
        "Side throws"
      ).split(","),
    );
  });

  test("are a rectangle of text and finite numbers", () => {
    for (const row of cells) {
      expect(row).toHaveLength(15);
      for (const cell of row) expect(typeof cell === "string" || Number.isFinite(cell)).toBe(true);
    }
  });

  test("sideways figures are blank where no offline was noted, the date where none is known", () => {
    const mint = cells.find(([disc]) => disc === "Mint fairway")!;
    expect([mint[7], mint[8], mint[14]]).toEqual(["", "", ""]);
    expect(cells.find(([disc]) => disc === "Sand approach")![12]).toBe("");
  });

  test("the aim is opposite to the bias: misses to the right are aimed off to the left", () => {
    const right = readCard(
      [
        ["Disc", "Carry", "Offline"],
        ["Rose mid", 300, 30],
      ],
      null,
      DEFAULT_SETTINGS,
    );
    // atan(0.1)/2 of bias: about 15 ft at 300 ft.
    expect(cardCells(right, DEFAULT_SETTINGS)[1]![8]).toBeCloseTo(-15, 0);
  });

  test("discs that stay at home are not printed", () => {
    const bag = readBag([
      ["Disc", "In bag"],
      ["Copper mid", "no"],
    ]);
    const printed = cardCells(readCard(LOG, bag, DEFAULT_SETTINGS), DEFAULT_SETTINGS);
    expect(printed.map(([disc]) => disc)).not.toContain("Copper mid");
    expect(printed).toHaveLength(cells.length - 1);
  });
});

describe("a card made by hand", () => {
  const read = (cells: unknown[][]) => readCard(cells, null, DEFAULT_SETTINGS);

  test("carry and spread alone: one throw each, a wide interval", () => {
    const row = rowOf(
      read([
        ["Disc", "Carry", "Spread"],
        ["Copper mid", 300, 18],
      ]),
      "copper mid",
    );
    expect(row).toMatchObject({ evidence: 1, freedom: 4, throws: 1, verdict: "too few" });
    expect(row.scale).toBeCloseTo(0.06, 12);
    expect(Math.exp(row.mu) / 0.3048).toBeCloseTo(300, 9);
  });

  test("an interval alone tells the spread", () => {
    const row = rowOf(
      read([
        ["Disc", "Carry", "Low"],
        ["Copper mid", 300, 270],
      ]),
      "Copper mid",
    );
    // t(0.9) at 4 degrees of freedom is 1.5332063: any handbook.
    expect(row.scale).toBeCloseTo(Math.log(300 / 270) / (1.5332063 * Math.SQRT2), 7);
  });

  test("a spread that is a slip counts as not given", () => {
    const cells = (spread: unknown, side: unknown) => [
      ["Disc", "Carry", "Spread", "Side"],
      ["Copper mid", 300, spread, side],
    ];
    expect(read(cells(3.66e-322, 1e-300))).toEqual(read(cells("", "")));
  });

  test("a count of throws tells how much is known", () => {
    const row = rowOf(
      read([
        ["Disc", "Carry", "Low", "Throws"],
        ["Copper mid", 300, "", 9],
      ]),
      "Copper mid",
    );
    expect(row).toMatchObject({ evidence: 9, freedom: 12, scale: 0.07, throws: 9 });
  });

  test("rows that make no sense are left out with a sentence, blank ones passed over", () => {
    const card = read([
      ["Disc", "Carry", "High"],
      ["Copper mid", 300, 330],
      ["", "", ""],
      [0, 0, 0],
      ["copper MID", 310, ""],
      ["Mint fairway", "352", ""],
      ["", 200, ""],
      ["Rose mid", { error: "#N/A" }, ""],
      ["Slate putter", 5000, ""],
      ["Lemon driver", 350, { error: "#REF!" }],
    ]);
    expect(card.rows.map(({ disc }) => disc)).toEqual(["Lemon driver", "Copper mid"]);
    expect(card.leftOut.map(({ reason }) => reason)).toEqual([
      "Row 5: 'copper MID' is on the card already.",
      "Row 6: carry is text, '352'. Type it as a number.",
      "Row 7: disc is blank.",
      "Row 8: carry is an error, #N/A",
      expect.stringMatching(/Row 9: carry is 5000, farther/),
    ]);
  });

  test("a card without rows", () => {
    expect(read([["Disc", "Carry", "Low"]]).rows).toEqual([]);
  });
});
