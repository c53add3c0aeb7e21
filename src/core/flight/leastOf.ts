/** A point of a function: x and value. */
export type Point = readonly [number, number];

/**
 * Points spread over the interval before it is narrowed, so that one of two humps is not
 * missed; as shares of it, from the middle outwards.
 */
const SPREAD = [0.5, 0.25, 0.75, 0, 1];

const byPlace = ([one]: Point, [other]: Point): number => one - other;

/** Most points added after that. */
const NARROWINGS = 8;

/**
 * As shares of the interval: points this close are one, and gaps this narrow bracket the least
 * well, unless the function has no value on one side.
 */
const CLOSE = 0.002;
const NARROW = 0.1;

/** Where the parabola through three points is least; NaN where it has no least. */
function parabolaLeast([x1, y1]: Point, [x2, y2]: Point, [x3, y3]: Point): number {
  const left = (y2 - y1) / (x2 - x1);
  const right = (y3 - y2) / (x3 - x2);
  const bend = (right - left) / (x3 - x1);
  return bend > 0 ? (x1 + x2) / 2 - left / (2 * bend) : NaN;
}

/**
 * Where to look next: where a parabola through the best point and its neighbours is least, or
 * the middle of the wider gap beside the best while that one is wide. NaN when there is
 * nothing left to gain.
 */
function nextLook(points: readonly Point[], best: number, span: number): number {
  const middle = Math.max(1, Math.min(points.length - 2, best));
  const [left, centre, right] = [points[middle - 1]!, points[middle]!, points[middle + 1]!];
  const bottom = Math.max(left[0], Math.min(right[0], parabolaLeast(left, centre, right)));
  const known = points.some(([x]) => Math.abs(x - bottom) < CLOSE * span);
  if (!known && !Number.isNaN(bottom)) return bottom;

  const [x] = points[best]!;
  const below = gapTo(points[best - 1], x, span);
  const above = gapTo(points[best + 1], x, span);
  if (below === 0 && above === 0) return NaN;
  return above > below ? x + above / 2 : x - below / 2;
}

/** Width of the gap between the best place and a neighbour; 0 where it is narrow, or none. */
function gapTo(neighbour: Point | undefined, x: number, span: number): number {
  if (!neighbour) return 0;
  const gap = Math.abs(neighbour[0] - x);
  const narrow = neighbour[1] < Infinity ? NARROW : CLOSE;
  return gap < narrow * span ? 0 : gap;
}

/**
 * Where a continuous function is least on an interval, both ends included: the best of a few
 * spread points, narrowed by successive parabolic interpolation. Infinity marks where the
 * function has no value; where it has none at all, the point's value is Infinity.
 */
export function leastOf(valueAt: (x: number) => number, low: number, high: number): Point {
  const span = high - low;
  const points = SPREAD.map((share): Point => {
    const x = low + span * share;
    return [x, valueAt(x)];
  }).sort(byPlace);
  for (let narrowing = 0; ; narrowing++) {
    const best = points.reduce((least, [, y], index) => (y < points[least]![1] ? index : least), 0);
    const x = narrowing < NARROWINGS ? nextLook(points, best, span) : NaN;
    if (Number.isNaN(x)) return points[best]!;
    points.push([x, valueAt(x)]);
    points.sort(byPlace);
  }
}
