/** Distances that the bag covers badly. */
import { answerKey } from "../choice/answerKey";
import { bagInHand } from "../choice/bagInHand";
import { GAP_LOSS } from "../constants";
import { remember } from "../memory";
import type { Card, CardRow, Settings } from "../types";
import { coverOf } from "./cover";

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

const memory = remember<Gap[]>(16);

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
  return memory(answerKey(card, settings, null), () => findGaps(rows, card, settings));
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
