import { unavailable } from "../errors";
import { remember } from "../memory";
import { messages } from "../messages";
import type { DiscType, Shot } from "../types";
import { softestEvenBlownBack, softestThrow, type Launch } from "./adapted";
import { isStandard } from "./air";
import { CALM_LEVEL_M, calmLevelM } from "./calmLevel";
import { checkShot } from "./checkShot";
import { polarFor } from "./polar";

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
