import { TOLERANCE_MPS } from "./fly";
import { carryM, type Setting } from "./throwing";

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
