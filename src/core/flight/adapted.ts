import { LEAST_ELEVATION_RAD, MOST_ELEVATION_RAD } from "../constants";
import { carryM, landsForward, type Setting, TOLERANCE_MPS } from "./integrator";

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

/** Speeds between which a throw is sought, m/s; no arm throws faster. Assumption. */
const LEAST_SPEED_MPS = 0.25;
const MOST_SPEED_MPS = 80;

/** How much care is taken to find a speed. */
export interface Care {
  /** Tolerance of the flights, see flyDown, m/s. */
  readonly flightMps: number;
  /**
   * A carry this close, as a share of the distance, shows the speed well enough: no flight
   * tries it any more.
   */
  readonly missShare: number;
  /** Speeds this close are one, m/s. */
  readonly speedMps: number;
}

/** For comparing throws: flights good to 2 cm, in a third of the time. */
export const ROUGH: Care = { flightMps: 2e-3, missShare: 1e-3, speedMps: 1e-4 };
export const FINE: Care = { flightMps: TOLERANCE_MPS, missShare: 1e-5, speedMps: 1e-9 };

/** One look may be this many times faster or slower than the one before. */
const LONGEST_STRIDE = 1.6;

/** Every so many looks the middle is taken, so that the bracket shrinks whatever the shape. */
const LOOKS_PER_HALVING = 4;

/** A speed, and how much farther a throw carries that is faster than that: m for each m/s. */
export interface SpeedFound {
  readonly speedMps: number;
  readonly gainS: number;
}

/** One look: a speed, and how far beyond the distance a throw of it carries. */
interface Look {
  readonly speedMps: number;
  readonly beyondM: number;
}

const gainBetween = (one: Look, other: Look): number =>
  (one.beyondM - other.beyondM) / (one.speedMps - other.speedMps);

/** A faster or slower speed than the last, as needed, while nothing bounds it on that side. */
function stride({ speedMps, beyondM }: Look, aim: number): number {
  if (beyondM < 0) {
    const most = Math.min(MOST_SPEED_MPS, speedMps * LONGEST_STRIDE);
    return aim > speedMps ? Math.min(most, aim) : most;
  }
  const least = Math.max(LEAST_SPEED_MPS, speedMps / LONGEST_STRIDE);
  return aim < speedMps ? Math.max(least, aim) : least;
}

/**
 * The speed, m/s, at which a throw at that elevation just carries to a distance: by secants,
 * kept between the fastest speed found too slow and the slowest found fast enough. Infinity
 * where no speed is enough; 0 where the least is too much, as with a strong wind behind. The
 * nearer the guess, the sooner it is found.
 */
export function speedFor(
  distanceM: number,
  elevationRad: number,
  setting: Setting,
  guess: SpeedFound,
  care: Care,
): SpeedFound {
  let tooSlow = 0;
  let enough = Infinity;
  let { speedMps, gainS } = guess;
  let before: Look | null = null;
  for (let count = 1; ; count++) {
    const beyondM = carryM(speedMps, elevationRad, setting, care.flightMps) - distanceM;
    const look: Look = { speedMps, beyondM };
    if (beyondM < 0) tooSlow = speedMps;
    else enough = speedMps;
    if (tooSlow === MOST_SPEED_MPS) return { speedMps: Infinity, gainS };
    if (enough === LEAST_SPEED_MPS) return { speedMps: 0, gainS };
    if (enough - tooSlow < care.speedMps) return { speedMps: enough, gainS };

    if (before) gainS = gainBetween(look, before);
    const aim = speedMps - beyondM / gainS;
    const inside = aim > tooSlow && aim < enough;
    if (Math.abs(beyondM) < care.missShare * distanceM) {
      return { speedMps: inside ? aim : speedMps, gainS };
    }
    if (tooSlow === 0 || enough === Infinity) speedMps = stride(look, aim);
    else if (inside && count % LOOKS_PER_HALVING > 0) speedMps = aim;
    else speedMps = (tooSlow + enough) / 2;
    before = look;
  }
}

/** The elevation, rad, above a slope at which a player serves a throw best: where a value is least. */
const bestElevation = (slopeRad: number, valueAt: (elevationRad: number) => number): number =>
  leastOf(valueAt, slopeRad + LEAST_ELEVATION_RAD, slopeRad + MOST_ELEVATION_RAD)[0];

/** The farthest that a throw of this speed carries on level ground, m. */
export function levelCarryM(speedMps: number, setting: Setting): number {
  const shortBy = (elevationRad: number) =>
    -carryM(speedMps, elevationRad, setting, ROUGH.flightMps);
  return carryM(speedMps, bestElevation(0, shortBy), setting);
}

/** Where the search for a speed begins: carry grows about as the square of the speed. */
function usualThrow(distanceM: number): SpeedFound {
  const speedMps = 2.3 * Math.sqrt(distanceM);
  return { speedMps, gainS: (2 * distanceM) / speedMps };
}

/** A speed, and the elevation that goes with it. */
export interface SoftestThrow {
  readonly elevationRad: number;
  /** Infinity where no throw gets to the target; 0 where the wind would outrun the throw. */
  readonly speedMps: number;
}

/**
 * `softestThrow`, also where the wind blows the disc back by the time it comes down: no throw
 * that a player can use, but its figures go on smoothly from those of one.
 */
export function softestEvenBlownBack(distanceM: number, setting: Setting): SoftestThrow {
  const slopeRad = Math.atan2(setting.riseM, distanceM);
  let least = Infinity;
  let guess = usualThrow(distanceM);
  const roughMps = (elevationRad: number) => {
    const found = speedFor(distanceM, elevationRad, setting, guess, ROUGH);
    if (found.speedMps > 0 && found.speedMps < least) {
      least = found.speedMps;
      guess = found;
    }
    return found.speedMps;
  };
  const elevationRad = bestElevation(slopeRad, roughMps);
  const { speedMps } = speedFor(distanceM, elevationRad, setting, guess, FINE);
  const outrun = speedMps <= Math.abs(setting.headwindMps);
  return { elevationRad, speedMps: outrun ? 0 : speedMps };
}

/**
 * The softest throw that carries to a target: the one of least speed over the elevations that a
 * player chooses from, which is the speed whose farthest throw just gets there.
 * The elevation is found with rough flights: about the best, speed hardly depends on it.
 *
 * Two kinds of flight are not counted, for a breath of wind changes all about them: a throw
 * slower than the wind, and one that is blown back by the time it comes down.
 */
export function softestThrow(distanceM: number, setting: Setting): SoftestThrow {
  const { elevationRad, speedMps } = softestEvenBlownBack(distanceM, setting);
  const flies = speedMps > 0 && speedMps < Infinity;
  const blownBack = flies && !landsForward(speedMps, elevationRad, setting);
  return { elevationRad, speedMps: blownBack ? Infinity : speedMps };
}
