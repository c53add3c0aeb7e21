/** How well a set of factors explains where one throw on the course finished. */
import { tCdf } from "../carry/student";
import { enoughPoints, shareWithin, tDensity } from "../choice/quadrature";

/**
 * What rounds are asked about, in the order of every list of them here: ln of the course's carry over
 * the field's, the factors of rise and air, headwind and tailwind, ln of the course spread (a share of
 * carry), ln of the course side (rad).
 */
export const UNKNOWNS = [
  "lnCourseCarry",
  "uphill",
  "headwind",
  "tailwind",
  "lnCourseSpread",
  "lnCourseSide",
] as const;
export type Unknown = (typeof UNKNOWNS)[number];

/** One throw on the course, with what the field says of the disc. Lengths in m, angles in rad. */
export interface CourseThrow {
  readonly distanceM: number;
  /** What rise and air add to the plays-like distance by factors of 1, and what the wind adds. */
  readonly slopeM: number;
  readonly windM: number;
  readonly tailwind: boolean;
  /** ln of power times level carry. */
  readonly lnCarry: number;
  /** Scale of ln carry at that power in the field, and of the sideways angle. */
  readonly spread: number;
  readonly sideSpread: number;
  /** Finish beyond the target along the line; null where it was not noted. */
  readonly finishM: number | null;
  /** Sideways from the line, right positive, and the angle that this is off the disc's own bias. */
  readonly offlineM: number | null;
  readonly offlineRad: number | null;
  readonly inCircle: boolean | null;
  readonly circleM: number;
}

/** Freedom of the t errors along the line and sideways. Assumption: heavy enough for a kicked disc. */
export const ALONG_FREEDOM = 8;
export const SIDE_FREEDOM = 6;

const alongDensity = tDensity(ALONG_FREEDOM);
const sideDensity = tDensity(SIDE_FREEDOM);
/** A chance this small or this near 1 is kept off the edge, so that one row cannot rule a factor out. */
const LEAST_SHARE = 1e-12;

/**
 * Minus the log likelihood of one throw, and its gradient added to `gradient`, in the order of
 * `UNKNOWNS`. With D* = D + uphill·slope + wind factor·wind:
 *
 *     ln(D*(1 + finish/D)) − ln carry − ln courseCarry  ~  t₈ · √(spread² + course spread²)
 *     offline angle − bias                              ~  t₆ · √(side spread² + course side²)
 *
 * and, where no finish was noted, in or out of the circle by the chance of that. A missing finish with
 * an offline leaves only the line in doubt: the chance is then that of the chord at that offline.
 *
 * @returns Infinity where the factors leave nothing of the distance.
 */
export function addThrow(
  thrown: CourseThrow,
  unknowns: readonly number[],
  gradient: number[],
): number {
  const { distanceM, slopeM, windM, tailwind, lnCarry, finishM, offlineRad, inCircle } = thrown;
  const [lnCourse, uphill, headwind, tailwindFactor, lnAlong, lnSide] = unknowns as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const playsLikeM = distanceM + uphill * slopeM + (tailwind ? tailwindFactor : headwind) * windM;
  if (!(playsLikeM > 0)) return Infinity;
  const short = Math.log(playsLikeM) - lnCarry - lnCourse;
  const along = Math.hypot(thrown.spread, Math.exp(lnAlong));
  const side = Math.hypot(thrown.sideSpread, Math.exp(lnSide));
  let value = 0;
  let byShort = 0;
  let byAlong = 0;
  let bySide = 0;
  if (finishM !== null) {
    const z = (short + Math.log1p(finishM / distanceM)) / along;
    const pull = ((ALONG_FREEDOM + 1) * z) / (ALONG_FREEDOM + z * z);
    value += Math.log(along) - Math.log(alongDensity(z));
    byShort += pull / along;
    byAlong += (1 - pull * z) / along;
  } else if (inCircle !== null) {
    const chance =
      thrown.offlineM === null
        ? circleChance(thrown, short, along, side)
        : chordChance(thrown, thrown.offlineM, short, along);
    const share = Math.min(Math.max(chance.value, LEAST_SHARE), 1 - LEAST_SHARE);
    value -= Math.log(inCircle ? share : 1 - share);
    const factor = inCircle ? -1 / share : 1 / (1 - share);
    byShort += factor * chance.byShort;
    byAlong += factor * chance.byAlong;
    bySide += factor * chance.bySide;
  }
  if (offlineRad !== null) {
    const z = offlineRad / side;
    const pull = ((SIDE_FREEDOM + 1) * z) / (SIDE_FREEDOM + z * z);
    value += Math.log(side) - Math.log(sideDensity(z));
    bySide += (1 - pull * z) / side;
  }
  gradient[0]! -= byShort;
  gradient[1]! += (byShort * slopeM) / playsLikeM;
  gradient[tailwind ? 3 : 2]! += (byShort * windM) / playsLikeM;
  gradient[4]! += (byAlong * Math.exp(2 * lnAlong)) / along;
  gradient[5]! += (bySide * Math.exp(2 * lnSide)) / side;
  return value;
}

/** A chance with its slopes in ln(plays-like / carry) and in the two scales. */
interface Chance {
  readonly value: number;
  readonly byShort: number;
  readonly byAlong: number;
  readonly bySide: number;
}

/**
 * The chance of the circle as `chanceOf` has it, for t errors of 8 and 6 degrees of freedom: over the
 * diameter, the density of the miss times the share of angles within the circle there.
 */
function circleChance(
  { distanceM, circleM, spread, sideSpread }: CourseThrow,
  short: number,
  along: number,
  side: number,
): Chance {
  // By the spreads of the field, the least there can be: so the points stay while the factors move.
  const points = enoughPoints(circleM, [
    { scaleM: spread * distanceM, freedom: ALONG_FREEDOM },
    { scaleM: sideSpread * distanceM, freedom: SIDE_FREEDOM },
  ]);
  const within = shareWithin(SIDE_FREEDOM);
  const chance = { value: 0, byShort: 0, byAlong: 0, bySide: 0 };
  for (let index = 0; index < points.alongM.length; index++) {
    const missM = points.alongM[index]!;
    if (!(missM > -distanceM)) continue;
    const z = (short + Math.log1p(missM / distanceM)) / along;
    const reach = Math.atan(points.halfWidthM[index]! / distanceM) / side;
    const density = (alongDensity(z) * points.weightM[index]!) / (along * (distanceM + missM));
    const pull = ((ALONG_FREEDOM + 1) * z) / (ALONG_FREEDOM + z * z);
    const share = within(reach);
    chance.value += density * share;
    chance.byShort -= (density * share * pull) / along;
    chance.byAlong += (density * share * (pull * z - 1)) / along;
    chance.bySide -= (density * 2 * sideDensity(reach) * reach) / side;
  }
  return chance;
}

/** The chance to finish within the circle along the line, the sideways miss being known. */
function chordChance(
  { distanceM, circleM }: CourseThrow,
  offlineM: number,
  short: number,
  along: number,
): Chance {
  const halfM = Math.sqrt(Math.max(0, circleM ** 2 - offlineM ** 2));
  const ends = [halfM, -Math.min(halfM, distanceM)].map(
    (missM) => (short + Math.log1p(missM / distanceM)) / along,
  );
  const [far, near] = ends.map((z) => (Number.isFinite(z) ? z : -1e9)) as [number, number];
  return {
    value: tCdf(far, ALONG_FREEDOM) - tCdf(near, ALONG_FREEDOM),
    byShort: (alongDensity(far) - alongDensity(near)) / along,
    byAlong: (near * alongDensity(near) - far * alongDensity(far)) / along,
    bySide: 0,
  };
}
