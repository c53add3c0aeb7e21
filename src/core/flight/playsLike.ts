import { FARTHEST_TARGET_M, STANDARD_DENSITY, STRONGEST_WIND_MPS } from "../constants";
import { DomainError, unavailable, unusable } from "../errors";
import { remember } from "../memory";
import { messages } from "../messages";
import { DISC_TYPES, type DiscType, type Shot } from "../types";
import { type Launch, levelCarryM, softestEvenBlownBack, softestThrow } from "./adapted";
import { type Conditions, type Factor, isStandard } from "./air";
import { cubic } from "./curve";
import { type Polar, polarFor } from "./polar";

/** How far a throw of this speed, m/s, carries on level ground in calm standard air, m. */
export const calmLevelM = (polar: Polar, speedMps: number, launch: Launch): number =>
  levelCarryM(speedMps, { polar, densityKgM3: STANDARD_DENSITY, headwindMps: 0, riseM: 0 }, launch);

/** The figures for a type are worked out at each multiple of this speed, when first needed. */
const KNOT_MPS = 1;

/** Slower than this knot a throw is little more than a drop, and is worked out itself. */
const FIRST_KNOT = 4;

type Curve = (speedMps: number) => number;

function curveOf(type: DiscType): Curve {
  const polar = polarFor(type, 0);
  const exact = (speedMps: number) => calmLevelM(polar, speedMps, "adapted");
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
 * `calmLevelM` of an adapted throw, by type of disc: as it depends on the speed alone, it is a
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

/** Infinity and 0 as for SoftestThrow. */
function flyFor(
  { distanceM, riseM, headwindMps }: Shot,
  densityKgM3: number,
  type: DiscType | null,
  launch: Launch,
  softest: typeof softestThrow,
): number {
  const polar = polarFor(type, distanceM);
  const { speedMps } = softest(distanceM, { polar, densityKgM3, headwindMps, riseM }, launch);
  if (speedMps === 0 || speedMps === Infinity) return speedMps;
  return type && launch === "adapted"
    ? CALM_LEVEL_M[type](speedMps)
    : calmLevelM(polar, speedMps, launch);
}

/**
 * Plays-like distance by the flight alone, m: how far, on level ground in calm standard air,
 * the softest throw carries that reaches the target. An `unavailable` error where no throw
 * reaches it, or where that throw would be slower than the wind.
 */
export function flownM(
  shot: Shot,
  densityKgM3: number,
  type: DiscType | null,
  launch: Launch = "adapted",
): number {
  checkShot(shot);
  const { distanceM, riseM, headwindMps } = shot;
  if (riseM === 0 && headwindMps === 0 && isStandard(densityKgM3)) return distanceM;
  const key = `${distanceM} ${riseM} ${headwindMps} ${densityKgM3} ${type} ${launch}`;
  return reached(memory(key, () => flyFor(shot, densityKgM3, type, launch, softestThrow)));
}

/** `flownM`, also where the wind blows the disc back: see softestEvenBlownBack. Not remembered. */
export function flownEvenBlownBackM(
  shot: Shot,
  densityKgM3: number,
  type: DiscType | null,
): number {
  checkShot(shot);
  return reached(flyFor(shot, densityKgM3, type, "adapted", softestEvenBlownBack));
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

/** `playsLikeM` for a launch of choice. */
export const playsLikeByLaunchM = (
  shot: Shot,
  conditions: Conditions,
  type: DiscType | null,
  launch: Launch,
): number =>
  outOfFlights(shot, conditions, (met, densityKgM3) => flownM(met, densityKgM3, type, launch));

/**
 * Plays-like distance, m: the level, calm, sea-level distance that asks for the same throw.
 *
 * The flight of a point mass with the lift and drag of the disc's type (blended by the
 * distance where no type is given) is solved for the softest throw that reaches distance and
 * rise, the player choosing the elevation; plays-like is what that throw carries on level
 * ground in calm standard air. Only this difference is used: how far a disc flies at a given
 * speed is known to about ±10 % only, and is never reported. What rise and air add is multiplied
 * by the player's own uphill factor, what the wind adds by the headwind or tailwind factor.
 *
 * Accurate to 0.05 ft against the model; the model's own doubt is the band of
 * `playsLikeBandM`. An `unavailable` error where no throw reaches the target, where that
 * throw would be slower than the wind, on slopes above 45° and in winds above 40 m/s; an
 * `unusable` one for a distance not above 0 and for NaN.
 *
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * playsLikeM({ distanceM: 100, riseM: 0, headwindMps: 0 }, air, null) // 100
 */
export const playsLikeM = (shot: Shot, conditions: Conditions, type: DiscType | null): number =>
  playsLikeByLaunchM(shot, conditions, type, "adapted");

/**
 * `playsLikeM`, and a little beyond it: also where the wind blows the disc back as it comes
 * down. For grids to be interpolated in up to the edge of what a throw can reach; no player
 * can use these figures themselves.
 */
export const playsLikeEvenBlownBackM = (
  shot: Shot,
  conditions: Conditions,
  type: DiscType | null,
): number =>
  outOfFlights(shot, conditions, (met, densityKgM3) => flownEvenBlownBackM(met, densityKgM3, type));

/**
 * Plays-like distance and what slope, wind and air each have in it, for showing why. The
 * slope's part is found in calm standard air, the air's on that slope, the wind's in that air.
 * See `playsLikeM`, also for the errors.
 */
export function playsLikeParts(
  shot: Shot,
  conditions: Conditions,
  type: DiscType | null,
): PlaysLikeParts {
  const { distanceM } = shot;
  const { densityKgM3, uphill } = conditions;
  const totalM = playsLikeM(shot, conditions, type);
  const sloped = flownM(calmly(shot), STANDARD_DENSITY, type);
  const inAir = flownM(calmly(shot), densityKgM3, type);
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

export interface PlaysLikeBand {
  readonly lowM: number;
  readonly likelyM: number;
  readonly highM: number;
}

const LAUNCHES: readonly Launch[] = ["adapted", "fixed"];

/**
 * How far apart the answers lie that the physics allows, m: least and greatest plays-like
 * distance over the four types of disc, thrown adapted and at a fixed elevation, with the
 * likely answer of `playsLikeM` between them. A kind of throw that cannot reach the target
 * does not widen the band. Errors as there.
 *
 * @example
 * const air = { densityKgM3: 1.225, ...FULL_EFFECT };
 * playsLikeBandM({ distanceM: 100, riseM: 0, headwindMps: 0 }, air).highM // 100
 */
export function playsLikeBandM(
  shot: Shot,
  conditions: Conditions,
  type: DiscType | null = null,
): PlaysLikeBand {
  const likelyM = playsLikeM(shot, conditions, type);
  const types = type === null ? DISC_TYPES : [type];
  const answers = types
    .flatMap((each) =>
      LAUNCHES.map((launch) => orNaN(() => playsLikeByLaunchM(shot, conditions, each, launch))),
    )
    .filter((answerM) => !Number.isNaN(answerM));
  return { lowM: Math.min(likelyM, ...answers), likelyM, highM: Math.max(likelyM, ...answers) };
}
