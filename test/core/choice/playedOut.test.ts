/**
 * A bag of two discs played out: a million seeded rounds, every throw drawn from its spread and every
 * putt from the table, against the expected strokes.
 */
import { levelTargets } from "../../../src/core/choice/target";
import { strokesTable } from "../../../src/core/choice/strokes";
import { throwable } from "../../../src/core/choice/bagInHand";
import { conditionsOf } from "../../../src/core/flight/air";
import { DEFAULT_SETTINGS } from "../../../src/core/log/readSettings";
import { disc, settingsWith } from "../../support/cards";

const ROUNDS = 1_000_000;
const FREEDOM = 6;
const SCALE = 0.08;
const SIDE_SCALE = 0.06;

/** A seeded generator of numbers between 0 and 1: the mulberry32 mixing of a counter. */
function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** t with 6 degrees of freedom: a normal over the root of a mean of six squares; wild ones again. */
function drawT(next: () => number): number {
  // 0.999 quantile of t with 6 degrees of freedom, any handbook: 5.2076.
  for (;;) {
    const normal = Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
    const squares = -2 * Math.log((1 - next()) * (1 - next()) * (1 - next()));
    const t = normal / Math.sqrt(squares / FREEDOM);
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

const side = { biasRad: 0, scaleRad: SIDE_SCALE, freedom: FREEDOM, throws: 9 };
/** On a course that adds nothing to the spread of the field. */
const field = settingsWith({ courseSpread: 0, courseSideRad: 0 });
const discs = [56, 44.5].map((carryM) => {
  const row = disc(`${carryM} m`, carryM, { scale: SCALE, freedom: FREEDOM, side });
  return throwable(row, field);
});
const { strokes: table, choices } = strokesTable(
  discs,
  DEFAULT_SETTINGS.putting,
  levelTargets(conditionsOf(DEFAULT_SETTINGS)),
  120,
);

/** The spread of ln carry of the throw that each distance is played with; null for a putt. */
const throws = choices.map((choice) => {
  if (!choice) return null;
  const { row, powers } = choice.thrown;
  const power = powers[choice.at]!;
  return { centre: row.mu + Math.log(power), scale: Math.hypot(SCALE, 0.15 * (1 - power)) };
});

/** Strokes of one round from `distanceM`, with the throws that the table chose. */
function play(distanceM: number, next: () => number): number {
  let left = distanceM;
  for (let strokes = 1; ; strokes++) {
    const thrown = throws[Math.round(left)];
    const made = shareMade(left);
    if (!thrown || made >= 0) return next() < made ? strokes : strokes + 1;
    const carryM = Math.exp(thrown.centre + thrown.scale * drawT(next));
    left = Math.hypot(carryM - left, left * Math.tan(SIDE_SCALE * drawT(next)));
  }
}

test.each([50, 75])("from %d m", (distanceM) => {
  const next = seeded(20261125 + distanceM);
  let sum = 0;
  let squares = 0;
  for (let round = 0; round < ROUNDS; round++) {
    const strokes = play(distanceM, next);
    sum += strokes;
    squares += strokes * strokes;
  }
  const mean = sum / ROUNDS;
  const error = Math.sqrt((squares / ROUNDS - mean * mean) / ROUNDS);
  expect(Math.abs(mean - table[distanceM]!)).toBeLessThan(4 * error);
});
