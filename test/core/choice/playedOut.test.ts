/**
 * Holes played out: seeded rounds, every throw drawn from its spread and every putt from the table,
 * against the strokes and the chances of every score that are told. 200,000 rounds a hole; a million
 * in `npm run test:long`.
 */
import { rankOptions } from "../../../src/core/choice/rank";
import { scoresOf } from "../../../src/core/choice/scores";
import { gameOf } from "../../../src/core/choice/strokes";
import type { Hole } from "../../../src/core/types";
import { cardOf, disc, holeOf, settingsWith } from "../../support/cards";
import { drawT, seeded } from "../../support/draws";

const ROUNDS = process.env.CARRYBOOK_LONG ? 1_000_000 : 200_000;
const FREEDOM = 6;
const SCALE = 0.08;
const SIDE_SCALE = 0.06;
const COURSE = 0.05;
const COURSE_SIDE = 0.03;
const SOFTNESS = 0.15;

/** t with 6 degrees of freedom; wild ones again. */
function drawTame(next: () => number): number {
  // 0.999 quantile of t with 6 degrees of freedom, any handbook: 5.2076.
  for (;;) {
    const t = drawT(FREEDOM, next);
    if (Math.abs(t) <= 5.20763) return t;
  }
}

const PUTTING_FT = [
  [0, 1],
  [10, 0.95],
  [15, 0.85],
  [20, 0.7],
  [25, 0.55],
  [33, 0.35],
  [45, 0.15],
  [60, 0.06],
  [120, 0],
] as const;

function shareMade(distanceM: number): number {
  const feet = distanceM / 0.3048;
  const next = PUTTING_FT.findIndex(([far]) => feet <= far);
  if (next < 0) return NaN;
  if (next === 0) return 1;
  const [[near, nearShare], [far, farShare]] = [PUTTING_FT[next - 1]!, PUTTING_FT[next]!];
  return nearShare + ((feet - near) / (far - near)) * (farShare - nearShare);
}

const settings = settingsWith({ courseSpread: COURSE, courseSideRad: COURSE_SIDE });
const side = { biasRad: 0, scaleRad: SIDE_SCALE, freedom: FREEDOM, throws: 9 };
const known = { scale: SCALE, freedom: FREEDOM, side };
const card = cardOf(
  disc("long", 95, known),
  disc("middle", 75, known),
  disc("putter", 56, { ...known, softest: 0.15 }),
);
const carries: Record<string, number> = { long: 95, middle: 75, putter: 56 };
const { choices } = gameOf(card, settings).near;

/** The disc and power that each distance is played with; null for a putt. */
const policy = choices.map(
  (best) => best && { disc: best.thrown.row.disc, power: best.thrown.powers[best.at]! },
);

interface End {
  readonly alongM: number;
  readonly sideM: number;
}

function thrown(
  name: string,
  power: number,
  distanceM: number,
  aimM: number,
  next: () => number,
): End {
  const scale = Math.hypot(SCALE, COURSE, SOFTNESS * (1 - power));
  const carryM = carries[name]! * power * Math.exp(scale * drawTame(next));
  const angle = Math.hypot(SIDE_SCALE, COURSE_SIDE) * drawTame(next);
  return { alongM: carryM - distanceM, sideM: distanceM * Math.tan(angle) + aimM };
}

/** Strokes from a distance without trouble, by the policy. */
function playOn(distanceM: number, next: () => number): number {
  let left = distanceM;
  for (let strokes = 1; ; strokes++) {
    const best = policy[Math.round(left)];
    const made = shareMade(left);
    if (!best || made >= 0) return next() < made ? strokes : strokes + 1;
    const { alongM, sideM } = thrown(best.disc, best.power, left, 0, next);
    left = Math.hypot(alongM, sideM);
  }
}

/** Strokes of a hole: first the throw that is told, over again where it ends in the 20 m of trouble in front. */
function playFrom(
  hole: Hole,
  name: string,
  power: number,
  aimM: number,
  next: () => number,
): number {
  const behind = hole.longTroubleM ?? Infinity;
  const front = -(hole.shortTroubleM ?? Infinity);
  const [leftEdge, rightEdge] = [-(hole.leftTroubleM ?? Infinity), hole.rightTroubleM ?? Infinity];
  for (let strokes = 1; ; strokes += 2) {
    let { alongM, sideM } = thrown(name, power, hole.distanceM, aimM, next);
    if (alongM < front && alongM > front - 20) continue;
    let out = 0;
    if (alongM > behind) [alongM, out] = [behind - 1, 1];
    if (sideM > rightEdge) [sideM, out] = [rightEdge - 1, 1];
    if (sideM < leftEdge) [sideM, out] = [leftEdge + 1, 1];
    return strokes + out + playOn(Math.hypot(alongM, sideM), next);
  }
}

const HOLES: [string, Hole][] = [
  ["an approach", holeOf(48)],
  ["in reach", holeOf(78)],
  ["two throws", holeOf(138)],
  ["trouble at the right", holeOf(80, { rightTroubleM: 7 })],
  ["trouble behind and at the left", holeOf(72, { longTroubleM: 8, leftTroubleM: 9 })],
  ["trouble in front", holeOf(70, { shortTroubleM: 9 })],
  [
    "trouble all round",
    holeOf(88, { longTroubleM: 9, shortTroubleM: 9, leftTroubleM: 9, rightTroubleM: 8 }),
  ],
];

test.each(HOLES)("%s", (_, hole) => {
  const [option] = rankOptions(hole, card, settings);
  const { holes } = scoresOf([hole], card, settings);
  const next = seeded(20261126 + Math.round(hole.distanceM));
  const counts = new Map<number, number>();
  let sum = 0;
  let squares = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const strokes = playFrom(hole, option!.disc, option!.power, option!.aimM, next);
    counts.set(strokes, (counts.get(strokes) ?? 0) + 1);
    sum += strokes;
    squares += strokes * strokes;
  }
  const mean = sum / ROUNDS;
  const error = Math.sqrt((squares / ROUNDS - mean * mean) / ROUNDS);
  expect(Math.abs(mean - option!.strokes)).toBeLessThan(4 * error);
  const { chances } = holes[0]!;
  expect(chances.reduce((all, chance) => all + chance, 0)).toBeCloseTo(1, 6);
  for (let k = 1; k < 8; k++) {
    const share = chances[k]!;
    const happened = (counts.get(k) ?? 0) / ROUNDS;
    // A score of which ten in all are expected, or fewer, says nothing.
    const allowed = 4 * Math.sqrt((share * (1 - share)) / ROUNDS) + 10 / ROUNDS;
    expect(Math.abs(happened - share)).toBeLessThan(allowed);
  }
});

test("what follows is what the strokes rest on, from where the middle throw ends", () => {
  const [option] = rankOptions(holeOf(138), card, settings);
  const [then] = option!.then;
  const best = policy[Math.round(then!.distanceM)]!;
  expect(then!.disc).toBe(best.disc);
  expect(Math.abs(then!.power - best.power)).toBeLessThan(0.1);
  expect(then!.distanceM).toBeCloseTo(138 - 95, 6);
});

test("no other aim comes to fewer strokes", () => {
  const hole = holeOf(80, { rightTroubleM: 7 });
  const [option] = rankOptions(hole, card, settings);
  expect(option!.aimM).toBeLessThan(0);
  const meanAt = (aimM: number): number => {
    const next = seeded(20261126);
    let sum = 0;
    for (let round = 0; round < ROUNDS / 4; round++)
      sum += playFrom(hole, option!.disc, option!.power, aimM, next);
    return sum / (ROUNDS / 4);
  };
  const told = meanAt(option!.aimM);
  // With the same draws the means of two aims differ by far less than by 4 of their own errors.
  for (const other of [0, -2, -4, -6, -8, -10, -12])
    expect(told).toBeLessThan(meanAt(other) + 0.006);
});

test("a round is the sum of its holes", () => {
  const course = HOLES.map(([, hole]) => hole);
  const { totals, mean, low, high } = scoresOf(course, card, settings);
  const next = seeded(7);
  const games = ROUNDS / 20;
  let orBetter = 0;
  let sum = 0;
  const told = totals.find(({ total }) => total === Math.round(mean))!;
  const plays = course.map((hole) => [hole, rankOptions(hole, card, settings)[0]!] as const);
  for (let game = 0; game < games; game++) {
    const total = plays.reduce(
      (strokes, [hole, { disc: name, power, aimM }]) =>
        strokes + playFrom(hole, name, power, aimM, next),
      0,
    );
    sum += total;
    if (total <= told.total) orBetter++;
  }
  const share = told.orBetter;
  expect(Math.abs(orBetter / games - share)).toBeLessThan(
    4 * Math.sqrt((share * (1 - share)) / games),
  );
  expect(Math.abs(sum / games - mean)).toBeLessThan(0.08);
  expect(low).toBeLessThan(mean);
  expect(high).toBeGreaterThan(mean);
});
