/** How often the player makes a putt, learnt from putts. */
import { PUTTING_PRIOR } from "../constants";
import { unavailable } from "../errors";
import { messages } from "../messages";
import type { PuttRow } from "../types";
import { fromMetres, toMetres } from "../units";

/** The distances of a putting table, ft: those of the usual one. */
const TABLE_FT = [10, 15, 20, 25, 33, 45, 60];

/** Points of the grid over ln of the angle, and over its growth. */
const ANGLES = 81;
const GROWTHS = 61;
/** How far the grid goes: in prior deviations of ln angle on each side, and in prior scales of growth. */
const ANGLE_REACH = 4;
const GROWTH_REACH = 14;

/** Half an angle's width of the basket that a putt must hit: 0.82 ft, as the geometric form has it. */
const HALF_TARGET_FT = 0.82;
/** Putts that no distance explains: a share that is missed even from right beside the basket. */
const ALWAYS_MISSED = 0.005;
/** Up to here the angle does not grow, ft. */
const GROWS_FROM_FT = 30;

/** What a putting table says of one distance: the mean, and bounds that the true share lies within at 80 %. */
export interface LearntPutt {
  readonly distanceM: number;
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** One way to putt, and how likely it is after what was seen. */
interface Way {
  readonly angleDeg: number;
  readonly growth: number;
  readonly weight: number;
}

/**
 * The share made from `distanceFt` by a player whose putts scatter by `angleDeg` up to 30 ft and by
 * `growth` more for each foot beyond, as a share: the angle must stay within that of the target
 * (geometric form after A. Vehtari, Modeling disc golf putting, 2026, and A. Gelman's golf putting
 * model).
 *
 * @example
 * shareMadeBy(20, 1.6, 0.02) // 0.66
 */
export function shareMadeBy(distanceFt: number, angleDeg: number, growth: number): number {
  const sigma =
    ((angleDeg * Math.PI) / 180) * (1 + growth * Math.max(distanceFt - GROWS_FROM_FT, 0));
  const angle = Math.atan2(HALF_TARGET_FT, distanceFt);
  return (1 - ALWAYS_MISSED) * (1 - Math.exp(-0.5 * (angle / sigma) ** 2));
}

/**
 * A putting table learnt from putts: on a grid of angle and growth, the prior (`PUTTING_PRIOR`) times
 * the binomial likelihood of what was made of what was tried; the mean of the share made over that.
 *
 * @param putts Putts made and tried by distance; rows of one distance add up.
 * @param distancesM Where to answer, m, above 0; the distances of the usual table where not given.
 * @returns For each distance the mean share, and 80 % bounds. The mean never rises with distance.
 * @throws `unavailable` without a putt.
 * @example
 * learnPutting([{ row: 2, day: null, distanceM: 6.1, made: 14, tried: 20 }])[2]?.share // 0.69
 */
export function learnPutting(
  putts: readonly PuttRow[],
  distancesM: readonly number[] = TABLE_FT.map((feet) => toMetres(feet, "ft")),
): LearntPutt[] {
  if (!putts.some(({ tried }) => tried > 0)) throw unavailable(messages.learn.noPutts());
  const ways = likelyWays(putts);
  return distancesM.map((distanceM) => {
    const feet = fromMetres(distanceM, "ft");
    const shares = ways.map(({ angleDeg, growth, weight }) => ({
      share: shareMadeBy(feet, angleDeg, growth),
      weight,
    }));
    const mean = shares.reduce((sum, { share, weight }) => sum + share * weight, 0);
    shares.sort((one, other) => one.share - other.share);
    return { distanceM, share: mean, low: quantile(shares, 0.1), high: quantile(shares, 0.9) };
  });
}

function likelyWays(putts: readonly PuttRow[]): Way[] {
  const { lnAngle, growthScale } = PUTTING_PRIOR;
  const ways = Array.from({ length: ANGLES * GROWTHS }, (_, index) => {
    const sds = ANGLE_REACH * ((2 * (index % ANGLES)) / (ANGLES - 1) - 1);
    const scales = ((Math.floor(index / ANGLES) + 0.5) * GROWTH_REACH) / GROWTHS;
    const angleDeg = Math.exp(lnAngle.mean + lnAngle.sd * sds);
    const growth = growthScale * scales;
    const prior = -(sds ** 2) / 2 + Math.log(scales) - scales;
    const log = putts.reduce((sum, { distanceM, made, tried }) => {
      const share = shareMadeBy(fromMetres(distanceM, "ft"), angleDeg, growth);
      return (
        sum +
        (made > 0 ? made * Math.log(share) : 0) +
        (tried > made ? (tried - made) * Math.log1p(-share) : 0)
      );
    }, prior);
    return { angleDeg, growth, log };
  });
  const most = ways.reduce((greatest, { log }) => Math.max(greatest, log), -Infinity);
  const weights = ways.map(({ log }) => Math.exp(log - most));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return ways.map(({ angleDeg, growth }, index) => ({
    angleDeg,
    growth,
    weight: weights[index]! / whole,
  }));
}

/** The share below which `part` of the weight lies; linear between the middles of the weights. */
function quantile(
  sorted: readonly { readonly share: number; readonly weight: number }[],
  part: number,
): number {
  let below = 0;
  let before = { share: sorted[0]!.share, at: 0 };
  for (const { share, weight } of sorted) {
    const at = below + weight / 2;
    if (at >= part) {
      const step = at > before.at ? (part - before.at) / (at - before.at) : 1;
      return before.share + Math.max(0, step) * (share - before.share);
    }
    before = { share, at };
    below += weight;
  }
  return before.share;
}
