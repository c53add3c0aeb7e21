import fc from "fast-check";
import golden from "../../golden/chance.json";
import circle from "../../golden/circle.json";
import log from "../../golden/card.json";
import { makeCard } from "../../../src/core/carry/card";
import { rowOf } from "../../../src/core/carry/levelThrows";
import { bestChance, chanceOf } from "../../../src/core/choice/chance";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readThrows } from "../../../src/core/log/readThrows";
import { toMetres } from "../../../src/core/units";
import { disc } from "../../support/cards";
import { plainTarget } from "../../../src/core/choice/target";
import { plainChance } from "../../support/plainChance";

const card = makeCard(
  readThrows([log.columns, ...log.throws], DEFAULT_SETTINGS),
  null,
  DEFAULT_SETTINGS,
);

// Independent computation in NumPy and SciPy: test/golden/chance.json.
test.each(golden.chances)("$disc at $distanceFt ft, power $power", (expected) => {
  const distanceM = toMetres(expected.distanceFt, "ft");
  const chance = chanceOf(rowOf(card, expected.disc), plainTarget(distanceM), 10);
  expect(Math.abs(chance(expected.power) - expected.chance)).toBeLessThan(golden.tolerance);
});

// So far out that angles are small and a log-normal carry is normal: test/golden/circle.json.
test.each(circle.offset.rows)("normal limit: radius $radius, $distance long", (expected) => {
  const farM = 1e7;
  const row = disc("normal", farM + expected.distance, {
    scale: 1 / farM,
    freedom: 1e7,
    side: { biasRad: 0, scaleRad: 1 / farM, freedom: 1e7, throws: 9 },
  });
  const chance = chanceOf(row, plainTarget(farM), expected.radius)(1);
  expect(Math.abs(chance - expected.probability)).toBeLessThan(circle.tolerance);
});

const anyDisc = fc
  .record({
    carryM: fc.double({ min: 40, max: 160, noNaN: true }),
    scale: fc.double({ min: 0.01, max: 0.2, noNaN: true }),
    freedom: fc.double({ min: 2, max: 60, noNaN: true }),
    evidence: fc.double({ min: 1, max: 30, noNaN: true }),
    scaleRad: fc.double({ min: 0.02, max: 0.2, noNaN: true }),
    sideFreedom: fc.double({ min: 4, max: 40, noNaN: true }),
  })
  .map(({ carryM, scaleRad, sideFreedom, ...form }) =>
    disc("any", carryM, {
      ...form,
      side: { biasRad: 0.1, scaleRad, freedom: sideFreedom, throws: 3 },
    }),
  );
const anyShare = fc.double({ min: 0.8, max: 1, noNaN: true });

// A sum over thin slices with another library's Student t (jstat, good to 6e-8); the sum itself is good
// to 5e-5, for want of thinner slices at the rim.
test("is the plain sum over slices", () => {
  fc.assert(
    fc.property(
      anyDisc,
      anyShare,
      anyShare,
      fc.constantFrom(0.8, 1, 1.3),
      (row, reach, power, stretch) => {
        const playsLikeM = Math.exp(row.mu) * reach;
        const target = { distanceM: playsLikeM * stretch, playsLikeM, playsLikeSdM: 0 };
        const found = chanceOf(row, target, 10)(power);
        const plain = plainChance(row, target.distanceM, playsLikeM, power, 10, 2000);
        expect(Math.abs(found - plain)).toBeLessThan(5e-5);
      },
    ),
    { numRuns: 15 },
  );
});

test("is a share, and no less in a wider circle", () => {
  fc.assert(
    fc.property(anyDisc, fc.double({ min: 20, max: 250, noNaN: true }), (row, distanceM) => {
      const target = plainTarget(distanceM);
      const [narrow, wide] = [chanceOf(row, target, 8)(1), chanceOf(row, target, 10)(1)];
      expect(narrow).toBeGreaterThanOrEqual(0);
      expect(wide).toBeLessThanOrEqual(1);
      expect(wide).toBeGreaterThanOrEqual(narrow - 1e-9);
    }),
  );
});

test("the best power is the one that lands there, or the nearest to it", () => {
  const shot = { riseM: 0, headwindMps: 0 };
  const row = disc("plain", 100);
  const at = (distanceM: number, power: number) => chanceOf(row, plainTarget(distanceM), 10)(power);
  const best = (distanceM: number) => bestChance({ ...shot, distanceM }, row, DEFAULT_SETTINGS);
  expect(best(130)).toBe(at(130, 1));
  expect(best(60)).toBe(at(60, 0.8));
  expect(best(95)).toBeGreaterThan(at(95, 1));
});
