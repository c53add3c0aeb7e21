import { coverage, gaps } from "../../../src/core/bag/coverage";
import { twins, worth } from "../../../src/core/bag/worth";
import { courseForm } from "../../../src/core/choice/courseForm";
import { rankOptions } from "../../../src/core/choice/rank";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { cardOf, disc, holeOf } from "../../support/cards";
import { plainChance } from "../../support/plainChance";

const settings = DEFAULT_SETTINGS;
const mid = disc("Copper mid", 90, { scale: 0.06 });
const driver = disc("Violet driver", 130, { scale: 0.08 });
const pair = cardOf(mid, driver);
const POWERS = Array.from({ length: 21 }, (_, i) => 0.8 + i / 100);

/** By brute force: every disc, every power, a plain sum with jstat's Student t; good to 1e-4. */
const plainBest = (distanceM: number) =>
  Math.max(
    ...pair.rows.flatMap((row) =>
      POWERS.map((power) =>
        plainChance(courseForm(row, settings), distanceM, distanceM, power, 10, 200),
      ),
    ),
  );
const plainIdeal = (distanceM: number) => Math.max(plainBest(distanceM), plainImaginary(distanceM));
const plainImaginary = (distanceM: number) =>
  plainChance(
    courseForm(
      disc("ideal", distanceM, {
        ...pair.population,
        side: { biasRad: 0, scaleRad: settings.sideSpreadRad, freedom: 4, throws: 0 },
      }),
      settings,
    ),
    distanceM,
    distanceM,
    1,
    10,
    200,
  );

describe("coverage", () => {
  test("is the best chance over discs and powers, beside an ideal disc", () => {
    const rows = coverage(pair, settings, { fromM: 80, toM: 140, stepM: 20 });
    expect(rows.map(({ distanceM }) => distanceM)).toEqual([80, 100, 120, 140]);
    for (const { distanceM, chance, ideal } of rows) {
      expect(Math.abs(chance - plainBest(distanceM))).toBeLessThan(2e-3);
      expect(Math.abs(ideal - plainIdeal(distanceM))).toBeLessThan(2e-3);
    }
    expect(rows[0]!.disc).toBe("Copper mid");
    expect(rows[3]!.disc).toBe("Violet driver");
  });

  test("from the shortest disc to the longest by tens of the unit where not told", () => {
    const rows = coverage(pair, settings);
    // 90 m are 295.3 ft, 130 m are 426.5 ft.
    expect(rows[0]!.distanceM).toBeCloseTo(290 * 0.3048, 9);
    expect(rows.at(-1)!.distanceM).toBeCloseTo(430 * 0.3048, 9);
    expect(rows).toHaveLength(15);
  });

  test("one disc, an empty bag, steps that make no sense", () => {
    expect(coverage(cardOf(mid), settings).length).toBeGreaterThan(0);
    expect(() => coverage(cardOf(), settings)).toThrow("no throws");
    expect(() => coverage(pair, settings, { stepM: 0 })).toThrow("above 0");
    expect(() => coverage(pair, settings, { fromM: 100, toM: 90 })).toThrow("above 0");
    expect(() => coverage(pair, settings, { fromM: NaN })).toThrow("above 0");
    expect(() => coverage(pair, settings, { stepM: 1e-4 })).toThrow("wider step");
  });
});

describe("gaps", () => {
  test("are where the brute-force loss is above 0.05", () => {
    const [gap, ...more] = gaps(pair, settings);
    expect(more).toEqual([]);
    const loss = (distanceM: number) => plainIdeal(distanceM) - plainBest(distanceM);
    expect(loss(gap!.fromM)).toBeCloseTo(0.05, 2);
    expect(loss(gap!.toM)).toBeCloseTo(0.05, 2);
    expect(loss(gap!.fromM - 2)).toBeLessThan(0.05);
    expect(loss(gap!.toM + 2)).toBeLessThan(0.05);
    expect(Math.abs(loss(gap!.worstM) - gap!.loss)).toBeLessThan(2e-3);
    expect(gap!.fromM).toBeGreaterThan(90);
    expect(gap!.toM).toBeLessThan(130);
  });

  test("a disc in the gap closes it; one disc has none", () => {
    const between = disc("Mint fairway", 109, { scale: 0.06 });
    const [before] = gaps(pair, settings);
    const after = gaps(cardOf(mid, between, driver), settings);
    expect(after.every(({ loss }) => loss < before!.loss / 2)).toBe(true);
    expect(gaps(cardOf(mid), settings)).toEqual([]);
  });
});

describe("worth", () => {
  const holes = [holeOf(88), holeOf(125), holeOf(60)];
  const approach = disc("Sand approach", 62, { scale: 0.06 });
  const spare = disc("Teal fairway", 90, { scale: 0.2 });
  const card = cardOf(approach, mid, driver, spare);
  const round = (names: readonly string[]) =>
    holes
      .map((hole) =>
        Math.min(
          ...rankOptions(
            hole,
            cardOf(...card.rows.filter((row) => names.includes(row.disc))),
            settings,
          ).map(({ strokes }) => strokes),
        ),
      )
      .reduce((sum, strokes) => sum + strokes, 0);
  const all = card.rows.map((row) => row.disc);

  test("is what a round takes more with that disc at home, all of it worked out anew", () => {
    const found = worth(holes, card, settings);
    expect(found).toHaveLength(4);
    for (const { disc: name, strokes } of found) {
      const lost = round(all.filter((other) => other !== name)) - round(all);
      // Options within 0.005 of the least may be picked, on each of the three holes.
      expect(Math.abs((strokes * holes.length) / 18 - Math.max(0, lost))).toBeLessThan(0.015);
    }
    const strokes = found.map((row) => row.strokes);
    expect(strokes).toEqual([...strokes].sort((a, b) => b - a));
    expect(found.at(-1)).toEqual({ disc: "Teal fairway", strokes: 0 });
  });

  test("the only disc for a line is worth what another disc costs there", () => {
    const lined = cardOf({ ...mid, line: "hyzer" }, { ...driver, line: "anhyzer" });
    const found = worth([holeOf(88, { line: "hyzer" })], lined, settings);
    expect(found[0]!.disc).toBe("Copper mid");
    const aHole = found[0]!.strokes / 18;
    expect(aHole).toBeGreaterThan(0.2);
    expect(aHole).toBeLessThan(3);
  });

  test("one disc, no holes, no hole with an answer", () => {
    expect(() => worth(holes, cardOf(mid), settings)).toThrow("two discs");
    expect(() => worth([], pair, settings)).toThrow("no hole");
    expect(() => worth([holeOf(90, { riseM: 300 })], pair, settings)).toThrow("Violet driver");
  });
});

describe("twins", () => {
  const other = disc("Olive mid", 90.5, { scale: 0.06 });

  test("two alike, and no third", () => {
    const found = twins(cardOf(mid, other, driver), settings);
    expect(found).toHaveLength(1);
    expect([found[0]!.a, found[0]!.b].sort()).toEqual(["Copper mid", "Olive mid"]);
    expect(found[0]!.costA).toBeLessThan(0.02);
    expect(found[0]!.costB).toBeLessThan(0.02);
    // 80 % intervals: quantile of t with 6 degrees of freedom 1.43976 (any handbook) · 0.06.
    const [low, high] = [Math.exp(-1.43976 * 0.06), Math.exp(1.43976 * 0.06)];
    expect(found[0]!.overlap).toBeCloseTo((90 * high - 90.5 * low) / (90.5 * (high - low)), 5);
  });

  test("none of different lines, of different carries, or alone", () => {
    const lines = cardOf({ ...mid, line: "hyzer" }, { ...other, line: "anhyzer" }, driver);
    expect(twins(lines, settings)).toEqual([]);
    expect(twins(pair, settings)).toEqual([]);
    expect(twins(cardOf(mid), settings)).toEqual([]);
  });
});
