import { STANDARD_DENSITY } from "../constants";
import type { DiscType, Shot } from "../types";
import type { Launch } from "./adapted";
import type { Conditions } from "./conditions";
import { flownM } from "./flown";

/** Plays-like distance, taken apart; the parts add up to the total, all in m. */
export interface PlaysLikeParts {
  readonly distanceM: number;
  /** What the rise, the wind and the air add; negative where they help. */
  readonly slopeM: number;
  readonly windM: number;
  readonly airM: number;
  readonly totalM: number;
}

const calmly = (shot: Shot): Shot => ({ ...shot, headwindMps: 0 });

/** The slope alone, in calm standard air. */
const slopeAloneM = (shot: Shot, type: DiscType | null, launch: Launch): number =>
  flownM(calmly(shot), STANDARD_DENSITY, type, launch);

/** `playsLikeM` for a launch of choice. */
export function playsLikeByLaunchM(
  shot: Shot,
  { densityKgM3, uphillFactor, windFactor }: Conditions,
  type: DiscType | null,
  launch: Launch,
): number {
  const { distanceM } = shot;
  const flown = flownM(shot, densityKgM3, type, launch);
  // The slope alone matters only where its share is not the others'.
  if (uphillFactor === windFactor) return distanceM + uphillFactor * (flown - distanceM);
  const sloped = slopeAloneM(shot, type, launch);
  return distanceM + uphillFactor * (sloped - distanceM) + windFactor * (flown - sloped);
}

/**
 * Plays-like distance, m: the level, calm, sea-level distance that asks for the same throw.
 *
 * The flight of a point mass with the lift and drag of the disc's type (blended by the
 * distance where no type is given) is solved for the softest throw that reaches distance and
 * rise, the player choosing the elevation; plays-like is what that throw carries on level
 * ground in calm standard air. Only this difference is used: how far a disc flies at a given
 * speed is known to about ±10 % only, and is never reported. What the rise adds is multiplied
 * by the player's own uphill factor, what wind and air add by the wind factor.
 *
 * Accurate to 0.05 ft against the model; the model's own doubt is the band of
 * `playsLikeBandM`. An `unavailable` error where no throw reaches the target, where that
 * throw would be slower than the wind, on slopes above 45° and in winds above 40 m/s; an `unusable` one for a distance not above 0 and for NaN.
 *
 * @example
 * const air = { densityKgM3: 1.225, uphillFactor: 1, windFactor: 1 };
 * playsLikeM({ distanceM: 100, riseM: 0, headwindMps: 0 }, air, null) // 100
 */
export const playsLikeM = (shot: Shot, conditions: Conditions, type: DiscType | null): number =>
  playsLikeByLaunchM(shot, conditions, type, "adapted");

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
  const { densityKgM3, uphillFactor, windFactor } = conditions;
  const totalM = playsLikeM(shot, conditions, type);
  const sloped = slopeAloneM(shot, type, "adapted");
  const inAir = flownM(calmly(shot), densityKgM3, type);
  const slopeM = uphillFactor * (sloped - distanceM);
  const airM = windFactor * (inAir - sloped);
  return { distanceM, slopeM, windM: totalM - distanceM - slopeM - airM, airM, totalM };
}
