import { STANDARD_DENSITY } from "../constants";
import { unavailable, unusable } from "../errors";
import { remember } from "../memory";
import { messages } from "../messages";
import type { DiscType, Shot } from "../types";
import { levelCarryM, softestMps, type Launch } from "./adapted";
import type { Conditions } from "./conditions";
import { polarFor, type Polar } from "./polar";

/** Plays-like distance, taken apart; all in m. */
export interface PlaysLikeParts {
  readonly distanceM: number;
  /** What the rise adds, and wind and air on top of that; negative where they help. */
  readonly slopeM: number;
  readonly windM: number;
  readonly airM: number;
  readonly totalM: number;
}

const level = (polar: Polar) =>
  ({ polar, densityKgM3: STANDARD_DENSITY, headwindMps: 0, riseM: 0 }) as const;

/** The level, calm, sea-level carry of the softest throw that reaches the target, by the flight alone. */
export function flownM(shot: Shot, densityKgM3: number, polar: Polar, launch: Launch): number {
  const { distanceM, riseM, headwindMps } = shot;
  const calm = level(polar);
  if (riseM === 0 && headwindMps === 0 && densityKgM3 === calm.densityKgM3) return distanceM;
  const speedMps = softestMps(distanceM, { polar, densityKgM3, headwindMps, riseM }, launch);
  if (speedMps === Infinity) throw unavailable(messages.flight.outOfReach());
  if (speedMps === 0) throw unavailable(messages.flight.blownPast());
  return levelCarryM(speedMps, calm, launch);
}

function check({ distanceM, riseM, headwindMps }: Shot): void {
  if (!(distanceM > 0 && distanceM < Infinity)) throw unusable(messages.flight.badDistance());
  if (!Number.isFinite(riseM)) throw unusable(messages.flight.badRise());
  if (!Number.isFinite(headwindMps)) throw unusable(messages.flight.badWind());
}

function takeApart(shot: Shot, conditions: Conditions, type: DiscType | null): PlaysLikeParts {
  check(shot);
  const { distanceM } = shot;
  const polar = polarFor(type, distanceM);
  const flown = (headwindMps: number, densityKgM3: number) =>
    flownM({ ...shot, headwindMps }, densityKgM3, polar, "adapted");
  const calmM = flown(0, STANDARD_DENSITY);
  const inAirM = flown(0, conditions.densityKgM3);
  const inWindM = flown(shot.headwindMps, conditions.densityKgM3);
  const slopeM = conditions.uphillFactor * (calmM - distanceM);
  const airM = conditions.windFactor * (inAirM - calmM);
  const windM = conditions.windFactor * (inWindM - inAirM);
  return { distanceM, slopeM, windM, airM, totalM: distanceM + slopeM + windM + airM };
}

const partsMemory = remember<PlaysLikeParts>(4096);

/**
 * Plays-like distance and what slope, wind and air each have in it; see `playsLikeM`. The
 * slope's part is found in calm standard air, the air's on that slope, the wind's in that air.
 */
export function playsLikeParts(
  shot: Shot,
  conditions: Conditions,
  type: DiscType | null,
): PlaysLikeParts {
  const key = [
    shot.distanceM,
    shot.riseM,
    shot.headwindMps,
    conditions.densityKgM3,
    conditions.uphillFactor,
    conditions.windFactor,
    type,
  ].join();
  return partsMemory(key, () => takeApart(shot, conditions, type));
}

/**
 * The plays-like distance, m.
 */
export const playsLikeM = (shot: Shot, conditions: Conditions, type: DiscType | null): number =>
  playsLikeParts(shot, conditions, type).totalM;
