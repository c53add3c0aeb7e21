/** How well a bag covers a range of distances. */
import { bagInHand } from "../choice/bagInHand";
import { chanceOf } from "../choice/chance";
import { courseForm, type ThrowForm } from "../choice/courseForm";
import { answerKey } from "../choice/plan";
import { downhill, powersOf, powerThatReaches } from "../choice/power";
import { levelTargets, plainTarget, type Target } from "../choice/target";
import { GAP_LOSS, LONGEST_HOLE_M, PRIOR_FREEDOM } from "../constants";
import { unusable } from "../errors";
import { conditionsOf } from "../flight/air";
import { remember } from "../memory";
import { messages } from "../messages";
import type { Card, CardRow, Settings } from "../types";
import { toMetres } from "../units";

// How well a bag covers one distance.

export interface Cover {
  readonly distanceM: number;
  /** Best chance of the circle over the bag, each disc at its best power. */
  readonly chance: number;
  /** Chance of an imaginary disc that carries just that far at smooth power, with the spread of the bag. */
  readonly ideal: number;
  /** The disc with the best chance. */
  readonly disc: string;
}

/**
 * Coverage as a function of distance, m above 0, level and calm in the air of the settings. `rows` are
 * the discs to choose from, at least one; equals go to the earlier.
 */
export function coverOf(
  rows: readonly CardRow[],
  { population }: Pick<Card, "population">,
  settings: Settings,
): (distanceM: number) => Cover {
  const level = levelTargets(conditionsOf(settings));
  const known = new Map(
    rows.map((row) => [row, { powers: powersOf(row, settings), form: courseForm(row, settings) }]),
  );
  const bestChance = (row: CardRow, target: Target): number => {
    const { powers, form } = known.get(row)!;
    const chance = chanceOf(form, target, settings.circleM);
    const start = powerThatReaches(form, powers, target);
    return -downhill(start, powers.length, (at) => -chance(powers[at]!)).cost;
  };
  return (distanceM) => {
    let best = { chance: 0, disc: "" };
    for (const row of rows) {
      const target = level(row, distanceM);
      if (!target) continue;
      const chance = bestChance(row, target);
      if (chance > best.chance) best = { chance, disc: row.disc };
    }
    const target = level(null, distanceM) ?? plainTarget(distanceM);
    const ideal = chanceOf(idealForm(target, population, settings), target, settings.circleM)(1);
    // Where a disc of one's own does better than the imaginary one, its chance is the ideal.
    return { distanceM, ...best, ideal: Math.max(ideal, best.chance) };
  };
}

/** A disc that carries just there, known through and through: no doubt of its middle adds to the spread of the bag. */
const idealForm = (
  { playsLikeM }: Target,
  { scale, freedom }: Card["population"],
  settings: Settings,
): ThrowForm => ({
  ...courseForm(
    {
      mu: 0,
      scale,
      freedom,
      evidence: Infinity,
      side: { biasRad: 0, scaleRad: settings.sideSpreadRad, freedom: PRIOR_FREEDOM, throws: 0 },
    },
    settings,
  ),
  mu: Math.log(playsLikeM),
});

export type CoverageRow = Cover;

/** Distances to look at, m; what is not given follows from the bag. */
export interface Steps {
  readonly fromM?: number | null;
  readonly toM?: number | null;
  readonly stepM?: number | null;
}

/** Steps in the player's unit where none is given, and the most rows that are answered. */
const USUAL_STEP = { ft: 10, m: 3 } as const;
const MOST_ROWS = 1000;

const memory = remember<CoverageRow[]>(16);

/**
 * Coverage, level and calm: for each distance the best chance of the circle over the bag, the chance of
 * an ideal disc, and the disc. From the shortest disc to the longest, by 10 ft or 3 m and on whole
 * multiples of that, unless told otherwise. Throws `unusable` for steps that make no sense or more than
 * 1000 rows, `unavailable` where the bag is empty.
 *
 * @example
 * coverage(card, DEFAULT_SETTINGS, { fromM: 90, toM: 100, stepM: 5 }).length // 3
 */
export function coverage(card: Card, settings: Settings, steps: Steps = {}): CoverageRow[] {
  const rows = bagInHand(card);
  const [longestM, shortestM] = [Math.exp(rows[0]!.mu), Math.exp(rows.at(-1)!.mu)];
  const asked = distances(steps, shortestM, longestM, settings);
  return memory(answerKey(card, settings, asked), () => asked.map(coverOf(rows, card, settings)));
}

function distances(
  { fromM, toM, stepM }: Steps,
  shortestM: number,
  longestM: number,
  { distanceUnit }: Settings,
): number[] {
  const step = stepM ?? toMetres(USUAL_STEP[distanceUnit], distanceUnit);
  const from = fromM ?? step * Math.max(1, Math.floor(shortestM / step));
  const to = toM ?? step * Math.ceil(longestM / step);
  if (!(step > 0 && from > 0 && to >= from)) throw unusable(messages.bag.badSteps());
  if (to > LONGEST_HOLE_M || (to - from) / step >= MOST_ROWS)
    throw unusable(messages.bag.tooManySteps(MOST_ROWS, LONGEST_HOLE_M));
  // A hair more, so that rounding does not lose the last step.
  const count = Math.floor((to - from) / step + 1e-9) + 1;
  return Array.from({ length: count }, (_, index) => from + index * step);
}

// Distances that the bag covers badly.

/** A stretch of distances where the best disc falls more than 0.05 behind an ideal one. */
export interface Gap {
  readonly fromM: number;
  readonly toM: number;
  /** Where it is worst, and how much of the chance of the circle is lost there. */
  readonly worstM: number;
  readonly loss: number;
}

interface Point {
  readonly distanceM: number;
  readonly loss: number;
}

const gapsMemory = remember<Gap[]>(16);

/**
 * The gaps between the shortest disc and the longest, nearest first; none where there is one disc.
 * Looked at every metre, with the ends where the loss crosses 0.05 between two. Throws `unavailable`
 * where the bag is empty.
 *
 * @example
 * gaps(card, DEFAULT_SETTINGS).length // 0 where the bag covers its distances well
 */
export function gaps(card: Card, settings: Settings): Gap[] {
  const rows = bagInHand(card);
  return gapsMemory(answerKey(card, settings, null), () => findGaps(rows, card, settings));
}

function findGaps(rows: readonly CardRow[], card: Card, settings: Settings): Gap[] {
  const cover = coverOf(rows, card, settings);
  const points = everyMetre(Math.exp(rows.at(-1)!.mu), Math.exp(rows[0]!.mu)).map((distanceM) => {
    const { ideal, chance } = cover(distanceM);
    return { distanceM, loss: ideal - chance };
  });
  return stretches(points).map((stretch) => gapOf(stretch, points));
}

function everyMetre(fromM: number, toM: number): number[] {
  const steps = Math.max(1, Math.ceil(toM - fromM));
  return Array.from({ length: steps + 1 }, (_, i) => fromM + ((toM - fromM) * i) / steps);
}

/** First and last place of each run of points beyond the loss that makes a gap. */
function stretches(points: readonly Point[]): [number, number][] {
  const found: [number, number][] = [];
  points.forEach(({ loss }, index) => {
    if (!(loss > GAP_LOSS)) return;
    const last = found.at(-1);
    if (last?.[1] === index - 1) last[1] = index;
    else found.push([index, index]);
  });
  return found;
}

function gapOf([first, last]: [number, number], points: readonly Point[]): Gap {
  const worst = points
    .slice(first, last + 1)
    .reduce((most, point) => (point.loss > most.loss ? point : most));
  return {
    fromM: crossingM(points[first]!, points[first - 1]),
    toM: crossingM(points[last]!, points[last + 1]),
    worstM: worst.distanceM,
    loss: worst.loss,
  };
}

/** Where the loss crosses the mark between a point of the gap and its neighbour outside. */
function crossingM(inside: Point, outside: Point | undefined): number {
  if (!outside) return inside.distanceM;
  const part = (inside.loss - GAP_LOSS) / (inside.loss - outside.loss);
  return inside.distanceM + part * (outside.distanceM - inside.distanceM);
}
