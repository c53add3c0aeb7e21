import { TOLERANCE_MPS } from "./fly";
import { carryM, type Setting } from "./throwing";

/** Speeds between which a throw is sought, m/s; no arm throws faster. Assumption. */
const LEAST_SPEED_MPS = 0.25;
const MOST_SPEED_MPS = 80;

/** How much care is taken to find a speed. */
export interface Care {
  /** Tolerance of the flights, see flyDown, m/s. */
  readonly flightMps: number;
  /** A carry this close, as a share of the distance, shows the speed: no flight tries it any more. */
  readonly missShare: number;
  /** Speeds this close are one, m/s. */
  readonly speedMps: number;
}

/** To compare elevations: flights good to 1 cm, in less than half the time. */
export const ROUGH: Care = { flightMps: 1e-3, missShare: 5e-4, speedMps: 1e-4 };
export const FINE: Care = { flightMps: TOLERANCE_MPS, missShare: 1e-5, speedMps: 1e-9 };

/** Carry grows about like this power of the speed: good enough for a first look. */
const GROWTH = 1.5;

/** One look may be this many times faster or slower than the one before. */
const LONGEST_STRIDE = 1.6;

/** Every so many looks the middle is taken, so that the bracket shrinks whatever the shape. */
const LOOKS_PER_HALVING = 4;

/** One look: a speed, and how far beyond the distance a throw of it carries. */
interface Look {
  readonly speedMps: number;
  readonly beyondM: number;
}

/** Where the line through the last two looks meets the distance; one look alone is scaled. */
function secant({ speedMps, beyondM }: Look, before: Look | null, distanceM: number): number {
  if (!before) return speedMps * (1 + beyondM / distanceM) ** (-1 / GROWTH);
  return speedMps - (beyondM * (speedMps - before.speedMps)) / (beyondM - before.beyondM);
}

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
 * where no speed is enough; 0 where the least is too much, as with a strong wind behind.
 */
export function speedFor(
  distanceM: number,
  elevationRad: number,
  setting: Setting,
  guessMps: number,
  care: Care,
): number {
  let tooSlow = 0;
  let enough = Infinity;
  let speedMps = guessMps;
  let before: Look | null = null;
  for (let count = 1; ; count++) {
    const beyondM = carryM(speedMps, elevationRad, setting, care.flightMps) - distanceM;
    const look: Look = { speedMps, beyondM };
    if (look.beyondM < 0) tooSlow = speedMps;
    else enough = speedMps;
    if (tooSlow === MOST_SPEED_MPS) return Infinity;
    if (enough === LEAST_SPEED_MPS) return 0;
    if (enough - tooSlow < care.speedMps) return enough;

    const aim = secant(look, before, distanceM);
    const inside = aim > tooSlow && aim < enough;
    if (Math.abs(beyondM) < care.missShare * distanceM) return inside ? aim : speedMps;
    if (tooSlow === 0 || enough === Infinity) speedMps = stride(look, aim);
    else if (inside && count % LOOKS_PER_HALVING > 0) speedMps = aim;
    else speedMps = (tooSlow + enough) / 2;
    before = look;
  }
}
