import golden from "../../golden/card.json";
import { makeCard } from "../../../src/core/carry/card";
import { rowOf } from "../../../src/core/carry/levelThrows";
import { tQuantile } from "../../../src/core/carry/student";
import { UPPER_TENTH } from "../../../src/core/constants";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readThrows } from "../../../src/core/log/readThrows";
import { METRES_PER_FOOT } from "../../../src/core/units";

const cells = [golden.columns, ...golden.throws];
const card = makeCard(readThrows(cells, DEFAULT_SETTINGS), null, DEFAULT_SETTINGS);

// Independent computation in NumPy and SciPy: test/golden/card.json, with its tolerances in ft.
describe("the card of a small log", () => {
  test.each(Object.entries(golden.card))("%s", (disc, expected) => {
    const row = rowOf(card, disc);
    const t = tQuantile(UPPER_TENTH, row.freedom);
    const carry = Math.exp(row.mu) / METRES_PER_FOOT;
    const reach = t * row.scale * Math.sqrt(1 + 1 / row.evidence);
    const found = {
      carry,
      low: carry * Math.exp(-reach),
      high: carry * Math.exp(reach),
      spread: carry * row.scale,
      knownTo: (carry * t * row.scale) / Math.sqrt(row.evidence),
    };
    for (const figure of ["carry", "low", "high", "spread", "knownTo"] as const) {
      expect(Math.abs(found[figure] - expected[figure])).toBeLessThan(golden.tolerance[figure]);
    }
    expect(row.throws).toBe(expected.throws);
  });

  test("tells the prior on spread", () => {
    expect(card.population.freedom).toBe(golden.priorFreedom);
    expect(Math.abs(card.population.scale - golden.priorScale)).toBeLessThan(golden.tolerance.s0);
  });

  test("longest first", () => {
    const carries = card.rows.map((row) => row.mu);
    expect(carries).toEqual([...carries].sort((a, b) => b - a));
  });
});
