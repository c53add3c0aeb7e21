import { STANDARD_DENSITY } from "../constants";
import type { DiscType, Shot } from "../types";
import type { Launch } from "./adapted";
import type { Conditions, Factor } from "./conditions";
import { flownEvenBlownBackM, flownM } from "./flown";

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
