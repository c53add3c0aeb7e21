import fc from "fast-check";
import golden from "../../golden/chance.json";
import circle from "../../golden/circle.json";
import log from "../../golden/card.json";
import course from "../../golden/learn.json";
import outcomes from "../../golden/outcomes.json";
import { makeCard } from "../../../src/core/carry/card";
import { rowOf } from "../../../src/core/carry/levelThrows";
import { bestChance, chanceOf } from "../../../src/core/choice/chance";
import { courseForm, fieldForm } from "../../../src/core/choice/courseForm";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { readThrows } from "../../../src/core/log/readThrows";
import { toMetres } from "../../../src/core/units";
import { disc, settingsWith } from "../../support/cards";
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
  const chance = chanceOf(fieldForm(rowOf(card, expected.disc)), plainTarget(distanceM), 10);
  expect(Math.abs(chance(expected.power) - expected.chance)).toBeLessThan(golden.tolerance);
});

// Independent computation in SciPy: test/golden/learn.json.
test.each(course.chance)("on the course: $playsLike m at power $power", (expected) => {
  const row = disc("any", expected.carry, {
    scale: expected.s,
    freedom: expected.nu,
    side: { biasRad: 0, scaleRad: expected.sb, freedom: expected.nuSide, throws: 9 },
  });
  const known = settingsWith({ courseSpread: expected.tau, courseSideRad: expected.tauSide });
  const target = { ...plainTarget(expected.D), playsLikeM: expected.playsLike };
  const chance = chanceOf(courseForm(row, known), target, 10)(expected.power);
  expect(Math.abs(chance - expected.value)).toBeLessThan(course.toleranceChance);
});

// The doubt of plays-like is one more spread in quadrature, the factors of course and day one more of carry.
test("doubt, course carry and form of the day count as the model has them", () => {
  const row = disc("any", 100);
  const doubted = chanceOf(
    courseForm(row, settingsWith({ courseSpread: 0.03 })),
    { ...plainTarget(90), playsLikeSdM: 3.6 },
    10,
  )(1);
  const spread = chanceOf(
    courseForm(row, settingsWith({ courseSpread: 0.05 })),
    plainTarget(90),
    10,
  )(1);
  expect(doubted).toBeCloseTo(spread, 9);
  const today = settingsWith({ courseCarry: 0.95, today: 1.02, courseSpread: 0.03, todaySd: 0.04 });
  const shorter = courseForm(disc("any", 95 * 1.02), settingsWith({ courseSpread: 0.05 }));
  expect(courseForm(row, today).mu).toBeCloseTo(shorter.mu, 12);
  expect(courseForm(row, today).scale).toBeCloseTo(shorter.scale, 12);
});

// A disc that reaches the middle of the row smoothly, below 200 ft a 200 ft putter thrown softer.
test.each([83, 125, 175, 225, 275, 325])(
  "with usual spreads, within what touring professionals reach at %d ft",
  (distanceFt) => {
    const row = disc("usual", toMetres(Math.max(200, distanceFt), "ft"), { softest: 0.15 });
    const power = Math.min(1, distanceFt / 200);
    const target = plainTarget(toMetres(distanceFt, "ft"));
    const chance = chanceOf(courseForm(row, DEFAULT_SETTINGS), target, 10)(power);
    const within = Object.values(outcomes.fromFairway)
      .flatMap((rows) =>
        rows.filter(({ fromFt, toFt }) => fromFt <= distanceFt && distanceFt < toFt),
      )
      .filter(({ low, high }) => low <= chance && chance <= high);
    expect(within.length).toBeGreaterThan(0);
  },
);

// So far out that angles are small and a log-normal carry is normal: test/golden/circle.json.
test.each(circle.offset.rows)("normal limit: radius $radius, $distance long", (expected) => {
  const farM = 1e7;
  const row = disc("normal", farM + expected.distance, {
    scale: 1 / farM,
    freedom: 1e7,
    side: { biasRad: 0, scaleRad: 1 / farM, freedom: 1e7, throws: 9 },
  });
  const chance = chanceOf(fieldForm(row), plainTarget(farM), expected.radius)(1);
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
        const form = courseForm(row, DEFAULT_SETTINGS);
        const found = chanceOf(form, target, 10)(power);
        const plain = plainChance(form, target.distanceM, playsLikeM, power, 10, 2000);
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
      const form = courseForm(row, DEFAULT_SETTINGS);
      const [narrow, wide] = [chanceOf(form, target, 8)(1), chanceOf(form, target, 10)(1)];
      expect(narrow).toBeGreaterThanOrEqual(0);
      expect(wide).toBeLessThanOrEqual(1);
      expect(wide).toBeGreaterThanOrEqual(narrow - 1e-9);
    }),
  );
});

test("the best power is the one that lands there, or the nearest to it", () => {
  const shot = { riseM: 0, headwindMps: 0 };
  const row = disc("plain", 100);
  const at = (distanceM: number, power: number) =>
    chanceOf(courseForm(row, DEFAULT_SETTINGS), plainTarget(distanceM), 10)(power);
  const best = (distanceM: number) => bestChance({ ...shot, distanceM }, row, DEFAULT_SETTINGS);
  expect(best(130)).toBe(at(130, 1));
  expect(best(60)).toBe(at(60, 0.8));
  expect(best(95)).toBeGreaterThan(at(95, 1));
});
