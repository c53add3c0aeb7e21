/** What the choice bench bundles: choosing and the bag as a whole, cold and warm, and against a plain statement of the same formulas. */
import { Bench } from "tinybench";
import { coverage, gaps } from "../../core/bag/coverage";
import { worth } from "../../core/bag/worth";
import { chanceOf } from "../../core/choice/chance";
import { courseForm } from "../../core/choice/courseForm";
import { gameOf, strokesToHoleOut } from "../../core/choice/strokes";
import { planCourse } from "../../core/choice/plan";
import { plainTarget } from "../../core/choice/target";
import { powersOf } from "../../core/choice/power";
import { DEFAULT_SETTINGS } from "../../core/log/readSettings";
import { DISC_TYPES, type Card, type Hole } from "../../core/types";
import { cardOf, disc, holeOf, settingsWith } from "../../../test/support/cards";
import { plainChance } from "../../../test/support/plainChance";
import type { BenchRow } from "../bench";

const DISCS = 20;
const HOLES = 18;
/** Slices that bring the plain sum to about 1e-4; ours is good to 1e-7. */
const SLICES = 60;

/** An invented bag; `turn` changes every carry by a hair, so that nothing is remembered of it. */
function bag(turn: number): Card {
  const rows = Array.from({ length: DISCS }, (_, i) =>
    disc(`Disc ${i}`, 62 + 3.5 * i + turn * 1e-7, {
      type: DISC_TYPES[Math.floor((4 * i) / DISCS)]!,
      scale: 0.05 + 0.004 * (i % 6),
      freedom: 5 + (i % 7) / 3,
      evidence: 2 + (i % 6),
      side: { biasRad: 0.01, scaleRad: 0.04 + 0.004 * (i % 5), freedom: 5 + (i % 4), throws: 3 },
    }),
  );
  return cardOf(...rows);
}

/** An invented course with slope and wind on most holes and trouble on some. */
const course = (turn: number): Hole[] =>
  Array.from({ length: HOLES }, (_, i) =>
    holeOf(60 + 4.5 * i + turn * 1e-7, {
      hole: `${i + 1}`,
      riseM: i % 3 ? ((i % 7) - 3) * 1.5 : 0,
      headwindMps: (i % 5) - 2,
      longTroubleM: i % 6 === 5 ? 14 : null,
    }),
  );

/** Best latency in ms; each run with a new number, so that it can ask for what was never asked. */
async function bestMs(work: (turn: number) => unknown, before?: (turn: number) => unknown) {
  let turn = 0;
  const bench = new Bench({ time: 300, iterations: 5, warmupTime: 200, throws: true });
  bench.add("work", () => work(turn), {
    beforeEach: () => {
      turn++;
      before?.(turn);
    },
  });
  const [task] = await bench.run();
  return task && "latency" in task.result ? task.result.latency.min : NaN;
}

const row = (name: string, ms: number, targetMs: number): BenchRow => ({
  name,
  target: `${targetMs} ms`,
  result: `${ms.toFixed(ms < 1 ? 3 : 1)} ms`,
  ok: ms <= targetMs,
});

const settings = DEFAULT_SETTINGS;
const circle = settingsWith({ aimFor: "circle" });

async function against(
  name: string,
  ours: (turn: number) => unknown,
  plain: () => unknown,
): Promise<BenchRow> {
  const [oursMs, plainMs] = [await bestMs(ours), await bestMs(plain)];
  return {
    name,
    target: "faster than plain",
    result: `${oursMs.toFixed(3)} ms, plain ${plainMs.toFixed(1)} ms, ${(plainMs / oursMs).toFixed(0)} ×`,
    ok: oursMs < plainMs,
  };
}

/** By the plain statement: for each hole the disc and power with the greatest chance of the circle. */
function plainPlan(holes: readonly Hole[], card: Card): unknown[] {
  const { circleM } = circle;
  return holes.map(({ distanceM }) => {
    const options = card.rows.flatMap((thrown) =>
      powersOf(thrown, circle).map((power) => ({
        disc: thrown.disc,
        power,
        chance: plainChance(
          courseForm(thrown, circle),
          distanceM,
          distanceM,
          power,
          circleM,
          SLICES,
        ),
      })),
    );
    return options.reduce((best, option) => (option.chance > best.chance ? option : best));
  });
}

export async function choiceRows(): Promise<BenchRow[]> {
  const card = bag(0);
  const holes = course(0);
  const level = holes.map(({ distanceM }) => holeOf(distanceM));
  const powers = powersOf(card.rows[0]!, settings);
  const everyChance = (
    chance: (row: Card["rows"][number], m: number) => (power: number) => number,
  ) =>
    holes.map(({ distanceM }) => card.rows.map((thrown) => powers.map(chance(thrown, distanceM))));
  return [
    row(
      "strokes from every distance, 20 discs, cold",
      await bestMs((turn) => gameOf(bag(turn), settings)),
      80,
    ),
    row("STROKES, 20 discs, again", await bestMs(() => strokesToHoleOut(90, bag(0), settings)), 1),
    row(
      "PLAN 18 × 20, flight and choice cold",
      await bestMs(
        (turn) => planCourse(course(turn), card, settings),
        () => gameOf(card, settings),
      ),
      50,
    ),
    row(
      "PLAN 18 × 20, choice cold",
      await bestMs(
        (turn) => planCourse(holes, bag(turn), settings),
        (turn) => gameOf(bag(turn), settings),
      ),
      20,
    ),
    row(
      "PLAN 18 × 20 by the circle, choice cold",
      await bestMs(
        (turn) => planCourse(holes, bag(turn), circle),
        (turn) => gameOf(bag(turn), circle),
      ),
      20,
    ),
    row("PLAN 18 × 20, again", await bestMs(() => planCourse(holes, card, settings)), 1),
    row("COVERAGE, 20 discs, cold", await bestMs((turn) => coverage(bag(turn), settings)), 40),
    row("gaps every metre, 20 discs, cold", await bestMs((turn) => gaps(bag(turn), settings)), 40),
    row("WORTH 18 × 20, cold", await bestMs((turn) => worth(course(0), bag(turn), settings)), 150),
    row("WORTH 18 × 20, again", await bestMs(() => worth(holes, card, settings)), 1),
    await against(
      "7,560 chances against plain quadrature (jstat)",
      () =>
        everyChance((thrown, distanceM) =>
          chanceOf(courseForm(thrown, settings), plainTarget(distanceM), settings.circleM),
        ),
      () =>
        everyChance(
          (thrown, distanceM) => (power) =>
            plainChance(
              courseForm(thrown, settings),
              distanceM,
              distanceM,
              power,
              settings.circleM,
              SLICES,
            ),
        ),
    ),
    await against(
      "PLAN by the circle, level, against a plain search (jstat)",
      (turn) => planCourse(level, bag(turn), circle),
      () => plainPlan(level, card),
    ),
  ];
}
