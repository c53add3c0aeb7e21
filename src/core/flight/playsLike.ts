import {
  FARTHEST_TARGET_M,
  NORMAL_UPPER_TENTH,
  STANDARD_DENSITY,
  STRONGEST_WIND_MPS,
} from "../constants";
import { DomainError, unavailable, unusable } from "../errors";
import { remember } from "../memory";
import { messages } from "../messages";
import { DISC_TYPES, type DiscType, type Shot } from "../types";
import { levelCarryM, softestEvenBlownBack, softestThrow } from "./adapted";
import { type Conditions, type Factor, isStandard } from "./air";
import { cubic } from "./curve";
import {
  type Between,
  blendedPolar,
  type DiscKind,
  type Polar,
  polarFor,
  typesAround,
} from "./polar";

/** How far a throw of this speed, m/s, carries on level ground in calm standard air, m. */
export const calmLevelM = (polar: Polar, speedMps: number): number =>
  levelCarryM(speedMps, { polar, densityKgM3: STANDARD_DENSITY, headwindMps: 0, riseM: 0 });

/** The figures for a type are worked out at each multiple of this speed, when first needed. */
const KNOT_MPS = 1;

/** Slower than this knot a throw is little more than a drop, and is worked out itself. */
const FIRST_KNOT = 4;

type Curve = (speedMps: number) => number;

function curveOf(type: DiscType): Curve {
  const polar = polarFor(type, 0);
  const exact = (speedMps: number) => calmLevelM(polar, speedMps);
  const knots: number[] = [];
  const knot = (index: number) => (knots[index] ??= exact(index * KNOT_MPS));
  return (speedMps) => {
    const place = speedMps / KNOT_MPS;
    const first = Math.floor(place) - 1;
    if (first < FIRST_KNOT) return exact(speedMps);
    const [y0, y1, y2, y3] = [knot(first), knot(first + 1), knot(first + 2), knot(first + 3)];
    return cubic(y0, y1, y2, y3, place - first);
  };
}

/**
 * `calmLevelM` by type of disc: as it depends on the speed alone, it is a
 * cubic through four of the figures at every m/s, within 0.03 ft.
 */
export const CALM_LEVEL_M = Object.fromEntries(
  DISC_TYPES.map((type) => [type, curveOf(type)]),
) as Record<DiscType, Curve>;

/** Refuses a wind along or across a throw that is no number, or stronger than is covered. */
export function checkWind(windMps: number): void {
  if (!Number.isFinite(windMps)) throw unusable(messages.flight.badWind());
  if (Math.abs(windMps) > STRONGEST_WIND_MPS) throw unavailable(messages.flight.tooWindy());
}

/** Refuses a task that makes no sense, or that the model does not cover. */
export function checkShot({ distanceM, riseM, headwindMps }: Shot): void {
  if (!(distanceM > 0 && distanceM < Infinity)) throw unusable(messages.flight.badDistance());
  if (distanceM > FARTHEST_TARGET_M) throw unavailable(messages.flight.outOfReach());
  if (!Number.isFinite(riseM)) throw unusable(messages.flight.badRise());
  if (Math.abs(riseM) > distanceM) throw unavailable(messages.flight.tooSteep());
  checkWind(headwindMps);
}

/** Answers remembered: a sheet's worth of holes, and the grids that are laid over a bag. */
const KEPT = 20_000;
const memory = remember<number>(KEPT);

/** Passes a speed or distance on, unless it says that there is no throw: see SoftestThrow. */
export function reached(found: number): number {
  if (found === Infinity) throw unavailable(messages.flight.outOfReach());
  if (found === 0) throw unavailable(messages.flight.outrun());
  return found;
}

type Softest = typeof softestThrow;

/** Infinity and 0 as for SoftestThrow. */
function flyFor(
  { distanceM, riseM, headwindMps }: Shot,
  densityKgM3: number,
  polar: Polar,
  softest: Softest,
  calmLevel = (speedMps: number): number => calmLevelM(polar, speedMps),
): number {
  const { speedMps } = softest(distanceM, { polar, densityKgM3, headwindMps, riseM });
  return speedMps === 0 || speedMps === Infinity ? speedMps : calmLevel(speedMps);
}

/** `flyFor` as last worked out: for a type, or part of the way between two. */
function rememberedFlight(shot: Shot, densityKgM3: number, between: Between): number {
  const { distanceM, riseM, headwindMps } = shot;
  const { from, to, share } = between;
  const whom = share === 0 ? from : `${from} ${to} ${share}`;
  const key = `${distanceM} ${riseM} ${headwindMps} ${densityKgM3} ${whom}`;
  return memory(key, () =>
    flyFor(
      shot,
      densityKgM3,
      blendedPolar(between),
      softestThrow,
      share === 0 ? CALM_LEVEL_M[from] : undefined,
    ),
  );
}

const isThrow = (found: number): boolean => found > 0 && found < Infinity;

/**
 * `flyFor` for a disc of unknown type: a parabola through the two types that it lies between and the
 * one half-way, so that the discs of a bag share those flights; within 0.2 ft of a flight of its own in
 * winds up to 10 mph, within 0.6 ft up to 20 mph. Such a flight it gets where one or two of the three do
 * not reach the target.
 */
function flyForCarry(shot: Shot, densityKgM3: number, between: Between): number {
  const { from, to, share } = between;
  if (share === 0) return rememberedFlight(shot, densityKgM3, between);
  const [start, middle, end] = [
    rememberedFlight(shot, densityKgM3, { from, to: from, share: 0 }),
    rememberedFlight(shot, densityKgM3, { from, to, share: 0.5 }),
    rememberedFlight(shot, densityKgM3, { from: to, to, share: 0 }),
  ];
  if (start === middle && middle === end) return start;
  if (!isThrow(start) || !isThrow(middle) || !isThrow(end))
    return rememberedFlight(shot, densityKgM3, between);
  const bend = start - 2 * middle + end;
  return start + share * (end - start) + 2 * bend * share * (share - 1);
}

/**
 * Plays-like distance by the flight alone, m: how far, on level ground in calm standard air,
 * the softest throw carries that reaches the target. An `unavailable` error where no throw
 * reaches it, or where that throw would be slower than the wind.
 */
export function flownM(shot: Shot, densityKgM3: number, kind: DiscKind): number {
  checkShot(shot);
  const { distanceM, riseM, headwindMps } = shot;
  if (riseM === 0 && headwindMps === 0 && isStandard(densityKgM3)) return distanceM;
  if (typeof kind === "number") return reached(flyForCarry(shot, densityKgM3, typesAround(kind)));
  const between = kind ? { from: kind, to: kind, share: 0 } : typesAround(distanceM);
  return reached(rememberedFlight(shot, densityKgM3, between));
}

/** `flownM`, also where the wind blows the disc back: see softestEvenBlownBack. Not remembered. */
export function flownEvenBlownBackM(shot: Shot, densityKgM3: number, kind: DiscKind): number {
  checkShot(shot);
  const polar = polarFor(kind, shot.distanceM);
  const calmLevel = typeof kind === "string" ? CALM_LEVEL_M[kind] : undefined;
  return reached(flyFor(shot, densityKgM3, polar, softestEvenBlownBack, calmLevel));
}

/** Plays-like distance, taken apart; the parts add up to the total, all in m. */
export interface PlaysLikeParts {
  readonly distanceM: number;
  /** What the rise, the wind and the air add; negative where they help. */
  readonly slopeM: number;
  readonly windM: number;
  readonly airM: number;
  readonly totalM: number;
}

/** The factor of a wind: a headwind's, or a tailwind's below 0. */
const windFactor = ({ headwind, tailwind }: Conditions, headwindMps: number): Factor =>
  headwindMps < 0 ? tailwind : headwind;

const calmly = (shot: Shot): Shot => ({ ...shot, headwindMps: 0 });

/** Plays-like distance, m, out of flights by the flight alone. */
function outOfFlights(
  shot: Shot,
  conditions: Conditions,
  flown: (shot: Shot, densityKgM3: number) => number,
): number {
  const { distanceM, headwindMps } = shot;
  const { densityKgM3, uphill } = conditions;
  const wind = windFactor(conditions, headwindMps);
  const totalM = flown(shot, densityKgM3);
  // What calm air adds matters only where its share is not the wind's.
  if (uphill.value === wind.value || headwindMps === 0)
    return distanceM + uphill.value * (totalM - distanceM);
  const calmM = flown(calmly(shot), densityKgM3);
  return distanceM + uphill.value * (calmM - distanceM) + wind.value * (totalM - calmM);
}

/**
 * Plays-like distance, m: the level, calm, sea-level distance that asks for the same throw.
 *
 * The flight of a point mass with the lift and drag of the disc (blended from two types where its
 * type is not known) is solved for the softest throw that reaches distance and rise, the player
 * choosing the elevation; plays-like by the flight is what that throw carries on level ground in
 * calm standard air. Only this difference is used: how far a disc flies at a given speed is known
 * to about ±10 % only, and is never reported. What rise and air add in calm air is multiplied by the
 * player's own uphill factor, what the wind adds to that by the headwind or tailwind factor.
 *
 * Accurate to 0.1 ft against the model; the model's own doubt is `playsLikeSdM`. An `unavailable`
 * error where no throw reaches the target, where that throw would be slower than the wind, on
 * slopes above 45° and in winds above 40 m/s; an `unusable` one for a distance not above 0 and for
 * NaN.
 *
 * @param shot Distance and rise in m, headwind in m/s, a tailwind below 0.
 * @param kind The disc meant: see DiscKind.
 * @returns m; may fall to 0 or below where learnt factors overdo a drop.
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * playsLikeM({ distanceM: 100, riseM: 0, headwindMps: 0 }, air, null) // 100
 */
export const playsLikeM = (shot: Shot, conditions: Conditions, kind: DiscKind): number =>
  outOfFlights(shot, conditions, (met, densityKgM3) => flownM(met, densityKgM3, kind));

/**
 * `playsLikeM`, and a little beyond it: also where the wind blows the disc back as it comes
 * down. For grids to be interpolated in up to the edge of what a throw can reach; no player
 * can use these figures themselves.
 */
export const playsLikeEvenBlownBackM = (
  shot: Shot,
  conditions: Conditions,
  kind: DiscKind,
): number =>
  outOfFlights(shot, conditions, (met, densityKgM3) => flownEvenBlownBackM(met, densityKgM3, kind));

/**
 * Plays-like distance and what slope, wind and air each have in it, for showing why. The
 * slope's part is found in calm standard air, the air's on that slope, the wind's in that air.
 * See `playsLikeM`, also for the errors.
 */
export function playsLikeParts(shot: Shot, conditions: Conditions, kind: DiscKind): PlaysLikeParts {
  const { distanceM } = shot;
  const { densityKgM3, uphill } = conditions;
  const totalM = playsLikeM(shot, conditions, kind);
  const sloped = flownM(calmly(shot), STANDARD_DENSITY, kind);
  const inAir = flownM(calmly(shot), densityKgM3, kind);
  const slopeM = uphill.value * (sloped - distanceM);
  const airM = uphill.value * (inAir - sloped);
  return { distanceM, slopeM, windM: totalM - distanceM - slopeM - airM, airM, totalM };
}

/** A figure, or NaN where there is none to be had; any other error goes on to the caller. */
export function orNaN(work: () => number): number {
  try {
    return work();
  } catch (error) {
    if (error instanceof DomainError && error.code === "unavailable") return NaN;
    throw error;
  }
}

/**
 * How sure a plays-like distance is: one standard deviation, m. In quadrature what rise and air add
 * times the doubt of the uphill factor, what the wind adds times that of the headwind or tailwind
 * factor, all that altitude and temperature do, and, where the type of disc is not known, the spread
 * of the answers over the four types; a type that does not get there is left out of that. 0 on level
 * ground in calm standard air. Errors as `playsLikeM`.
 *
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * playsLikeSdM({ distanceM: 100, riseM: 0, headwindMps: 0 }, air, null) // 0
 */
export function playsLikeSdM(shot: Shot, conditions: Conditions, kind: DiscKind): number {
  const { distanceM, riseM, headwindMps } = shot;
  const { densityKgM3, uphill } = conditions;
  const standard = isStandard(densityKgM3);
  const totalM = flownM(shot, densityKgM3, kind);
  if (riseM === 0 && headwindMps === 0 && standard) return 0;
  const calmM = headwindMps === 0 ? totalM : flownM(calmly(shot), densityKgM3, kind);
  const slopedM = standard ? calmM : flownM(calmly(shot), STANDARD_DENSITY, kind);
  return Math.hypot(
    (calmM - distanceM) * uphill.sd,
    (totalM - calmM) * windFactor(conditions, headwindMps).sd,
    (calmM - slopedM) * uphill.value,
    typeof kind === "string" ? 0 : typesSdM(shot, conditions),
  );
}

/** Standard deviation of the plays-like distance over the types of disc that get there, m. */
function typesSdM(shot: Shot, conditions: Conditions): number {
  const answers = DISC_TYPES.map((type) => orNaN(() => playsLikeM(shot, conditions, type))).filter(
    (answerM) => !Number.isNaN(answerM),
  );
  const mean = answers.reduce((sum, answerM) => sum + answerM, 0) / answers.length;
  const square = answers.reduce((sum, answerM) => sum + (answerM - mean) ** 2, 0);
  return answers.length === 0 ? 0 : Math.sqrt(square / answers.length);
}

export interface PlaysLikeBand {
  readonly lowM: number;
  readonly likelyM: number;
  readonly highM: number;
}

/**
 * Plays-like distance with the band in which it lies with a chance of 80 %, m: 1.2816 standard
 * deviations to either side, by `playsLikeSdM`. No width on level ground in calm standard air. The low
 * end is never below 0. Errors as `playsLikeM`.
 *
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * playsLikeBandM({ distanceM: 100, riseM: 0, headwindMps: 0 }, air).highM // 100
 */
export function playsLikeBandM(
  shot: Shot,
  conditions: Conditions,
  kind: DiscKind = null,
): PlaysLikeBand {
  const likelyM = playsLikeM(shot, conditions, kind);
  const halfM = NORMAL_UPPER_TENTH * playsLikeSdM(shot, conditions, kind);
  return { lowM: Math.max(0, likelyM - halfM), likelyM, highM: likelyM + halfM };
}
