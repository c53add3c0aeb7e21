import fc from "fast-check";
import { gameOf, puttingReachM, strokesToHoleOut } from "../../../src/core/choice/strokes";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import type { Card, CardRow, Settings } from "../../../src/core/types";
import { cardOf, disc, settingsWith } from "../../support/cards";

const settings = DEFAULT_SETTINGS;
const table = (card: Card, known: Settings = settings): Float64Array =>
  gameOf(card, known).strokesFor(500);

const anyDisc = fc
  .record({
    carryM: fc.double({ min: 45, max: 140, noNaN: true }),
    scale: fc.double({ min: 0.03, max: 0.12, noNaN: true }),
    freedom: fc.double({ min: 4, max: 20, noNaN: true }),
    scaleRad: fc.double({ min: 0.02, max: 0.1, noNaN: true }),
  })
  .map(({ carryM, scale, freedom, scaleRad }) =>
    disc(`${carryM} m`, carryM, {
      scale,
      freedom,
      side: { biasRad: 0, scaleRad, freedom: 6, throws: 3 },
    }),
  );
const anyBag = fc.array(anyDisc, { minLength: 1, maxLength: 5 });
const runs = { numRuns: 6, endOnFailure: true };

/** What two tables may differ by where theory says that they do not: the grid and the rule of points. */
const GRID = 0.005;

/** The most by which the second exceeds the first, at one and the same place. */
const mostRaised = (before: Float64Array, after: Float64Array): number =>
  Math.max(0, ...before.map((strokes, d) => after[d]! - strokes));

describe("expected strokes", () => {
  test("never fall with distance, and never below 1", () => {
    fc.assert(
      fc.property(anyBag, (rows) => {
        const strokes = table(cardOf(...rows));
        expect(strokes[0]).toBe(1);
        expect(mostRaised(strokes.subarray(1), strokes)).toBe(0);
      }),
      runs,
    );
  });

  test("are never raised by better putting", () => {
    fc.assert(
      fc.property(anyBag, fc.double({ min: 0, max: 1, noNaN: true }), (rows, gain) => {
        const better = settings.putting.map(({ distanceM, share }) => ({
          distanceM,
          share: share + gain * (1 - share),
        }));
        const before = table(cardOf(...rows));
        const after = table(cardOf(...rows), settingsWith({ putting: better }));
        expect(mostRaised(before, after)).toBeLessThan(GRID);
      }),
      runs,
    );
  });

  test("are never raised by one disc more", () => {
    fc.assert(
      fc.property(anyBag, anyDisc, (rows, more) => {
        const before = table(cardOf(...rows));
        const after = table(cardOf(...rows, more));
        expect(mostRaised(before, after)).toBeLessThan(GRID);
      }),
      runs,
    );
  });

  // Beyond reach a wild throw may get there by luck, so a tighter spread can cost there.
  test("are never raised by a tighter spread within reach of the disc", () => {
    fc.assert(
      fc.property(anyDisc, fc.double({ min: 0.5, max: 1, noNaN: true }), (row, share) => {
        const tighter: CardRow = {
          ...row,
          scale: row.scale * share,
          side: { ...row.side, scaleRad: row.side.scaleRad * share },
        };
        const [before, after] = [table(cardOf(row)), table(cardOf(tighter))];
        const from = Math.ceil(0.82 * Math.exp(row.mu));
        const within = (strokes: Float64Array) => strokes.subarray(from, Math.exp(row.mu) + 1);
        expect(mostRaised(within(before), within(after))).toBeLessThan(GRID);
      }),
      runs,
    );
  });

  test("are putts alone within the putting reach", () => {
    const card = cardOf(disc("mid", 80));
    const reachM = Math.floor(puttingReachM(settings.putting));
    expect(strokesToHoleOut(reachM, card, settings)).toBeLessThanOrEqual(2);
    expect(strokesToHoleOut(0, card, settings)).toBe(1);
    // 33 ft, default table: 0.35 made.
    expect(strokesToHoleOut(33 * 0.3048, card, settings)).toBeCloseTo(1.65, 2);
  });

  test("do not depend on the order of the rows or on what was asked before", () => {
    const rows = [disc("a", 60), disc("b", 90), disc("c", 91, { scale: 0.05 })];
    const first = table(cardOf(...rows));
    gameOf(cardOf(rows[0]!), settings);
    const again = table({ ...cardOf(...rows), rows: [...rows].reverse() });
    again.forEach((strokes, d) => expect(strokes).toBeCloseTo(first[d]!, 6));
  });

  test("a bag at home, no throws, a distance that is none, one too far", () => {
    const atHome = cardOf(disc("a", 60, { inBag: false }));
    const card = cardOf(disc("a", 60));
    const ask = (distanceM: number, from: Card) => () =>
      strokesToHoleOut(distanceM, from, settings);
    expect(ask(50, atHome)).toThrow("in the bag");
    expect(ask(50, cardOf())).toThrow("no throws");
    expect(ask(NaN, card)).toThrow("above 0");
    expect(ask(-1, card)).toThrow("above 0");
    expect(ask(501, card)).toThrow("500 m");
    expect(ask(500, card)()).toBeGreaterThan(5);
  });
});
