import { TYPE_DISTANCES_FT } from "../constants";
import { remember } from "../memory";
import { METRES_PER_FOOT } from "../units";
import type { Conditions } from "./air";
import { orNaN, playsLikeM, playsLikeSdM } from "./playsLike";
import type { DiscKind } from "./polar";

/** The cubic through values at 0, 1, 2 and 3, at x (Lagrange). NaN where one of them is. */
export function cubic(y0: number, y1: number, y2: number, y3: number, x: number): number {
  const [from1, from2, from3] = [x - 1, x - 2, x - 3];
  const outer = from1 * from2 * (x * y3 - from3 * y0);
  const inner = x * from3 * (from2 * y1 - from1 * y2);
  return outer / 6 + inner / 2;
}

/** A curve has a knot at each multiple of this; the bends of the blend over types fall on knots. */
const KNOT_FT = 12.5;
const BENDS = Object.values(TYPE_DISTANCES_FT).map((distanceFt) => distanceFt / KNOT_FT);

/** Nearer than this knot plays-like distance is too wild to interpolate, and is worked out. */
const FIRST_KNOT = 8;

const CURVES_KEPT = 256;
/** A figure, m, by the distance of the target, m. */
export type DistanceCurve = (distanceM: number) => number;
const memory = remember<DistanceCurve>(CURVES_KEPT);

/**
 * The first of the four knots about a place, counted in knots. The four may touch a bend but
 * not reach across it; those of one type have none.
 */
function firstOfFour(place: number, bends: readonly number[]): number {
  const below = Math.max(FIRST_KNOT, ...bends.filter((bend) => bend <= place));
  const above = Math.min(...bends.filter((bend) => bend > place));
  return Math.max(below, Math.min(above - 3, Math.floor(place) - 1));
}

function makeCurve(exact: (distanceM: number) => number, bends: readonly number[]): DistanceCurve {
  const knots: number[] = [];
  const knot = (index: number) =>
    (knots[index] ??= orNaN(() => exact(index * KNOT_FT * METRES_PER_FOOT)));
  return (distanceM) => {
    const place = distanceM / (KNOT_FT * METRES_PER_FOOT);
    if (!(place >= FIRST_KNOT && place < Infinity)) return exact(distanceM);
    const first = firstOfFour(place, bends);
    const [y0, y1, y2, y3] = [knot(first), knot(first + 1), knot(first + 2), knot(first + 3)];
    const found = cubic(y0, y1, y2, y3, place - first);
    if (!Number.isNaN(found)) return found;
    // A knot out of reach says nothing about this distance; two, one on each side, do.
    const below = Math.floor(place);
    const outOfReach = Number.isNaN(knot(below)) && Number.isNaN(knot(below + 1));
    return exact(outOfReach ? below * KNOT_FT * METRES_PER_FOOT : distanceM);
  };
}

const keyOf = (
  riseM: number,
  headwindMps: number,
  { densityKgM3, uphill, headwind, tailwind }: Conditions,
  kind: DiscKind,
): string =>
  [
    ...[riseM, headwindMps, densityKgM3, kind],
    ...[uphill, headwind, tailwind].flatMap(({ value, sd }) => [value, sd]),
  ].join(" ");

/**
 * Plays-like distance as a function of distance alone, m, for logs and grids that ask it often
 * in the same rise, wind and air: a cubic through four of `playsLikeM` every 12.5 ft, worked
 * out when first needed, within 0.05 ft of it. Below 100 ft, and near the end of what
 * can be reached, it is `playsLikeM` itself. Errors as there.
 *
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * playsLikeCurve(0, 0, air, null)(100) // 100
 */
export const playsLikeCurve = (
  riseM: number,
  headwindMps: number,
  conditions: Conditions,
  kind: DiscKind,
): DistanceCurve =>
  memory(keyOf(riseM, headwindMps, conditions, kind), () =>
    makeCurve(
      (distanceM) => playsLikeM({ distanceM, riseM, headwindMps }, conditions, kind),
      kind === null ? BENDS : [],
    ),
  );

/** `playsLikeSdM` in the same way; the doubt has no need of more than 0.1 ft. */
export const playsLikeSdCurve = (
  riseM: number,
  headwindMps: number,
  conditions: Conditions,
  kind: DiscKind,
): DistanceCurve =>
  memory(`sd ${keyOf(riseM, headwindMps, conditions, kind)}`, () =>
    makeCurve(
      (distanceM) => playsLikeSdM({ distanceM, riseM, headwindMps }, conditions, kind),
      kind === null ? BENDS : [],
    ),
  );
