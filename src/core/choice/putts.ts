/** Holing out with the putter. */
import type { PuttingRow } from "../types";

/**
 * Share of putts made from `distanceM`: certain at the target, then linear between the rows of the
 * putting table (nearest first), and on to nothing at twice the last distance. Without rows nothing
 * but a disc at the target is made.
 *
 * @example
 * shareMade(3, [{ distanceM: 2, share: 0.9 }, { distanceM: 4, share: 0.7 }]) // 0.8
 */
export function shareMade(distanceM: number, putting: readonly PuttingRow[]): number {
  let nearer: PuttingRow = { distanceM: 0, share: 1 };
  for (const row of [...putting, { distanceM: puttingReachM(putting), share: 0 }]) {
    if (distanceM <= row.distanceM && row.distanceM > nearer.distanceM) {
      const part = (distanceM - nearer.distanceM) / (row.distanceM - nearer.distanceM);
      return nearer.share + Math.max(0, part) * (row.share - nearer.share);
    }
    nearer = row;
  }
  return distanceM <= 0 ? 1 : 0;
}

/** Farther out than twice the last row of the table nobody putts. */
export const puttingReachM = (putting: readonly PuttingRow[]): number =>
  2 * (putting.at(-1)?.distanceM ?? 0);

/**
 * Expected putts to hole out from `distanceM`: one, and a second where the first misses (assumption:
 * the second is made); Infinity beyond the putting reach.
 */
export const putts = (distanceM: number, putting: readonly PuttingRow[]): number =>
  distanceM <= puttingReachM(putting) ? 2 - shareMade(distanceM, putting) : Infinity;
