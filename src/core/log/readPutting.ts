/** The putting table under the settings label Putting. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { PuttingRow } from "../types";
import { toMetres, type DistanceUnit } from "../units";
import { describeCell, isBlank, type PlainCell } from "./cell";

/**
 * Pairs of distance and share made, nearest first; an empty list where there is none. Throws an
 * `unusable` error for a share outside 0 to 1, a distance below 0, or two rows for one distance.
 */
export function readPutting(
  pairs: readonly (readonly [distance: PlainCell, share: PlainCell])[],
  unit: DistanceUnit,
): PuttingRow[] {
  const rows = pairs.map(([distance, share]) => ({
    distance: within(distance, "Putting distance", 0, 1000),
    share: isBlank(share) ? 0 : within(share, `Putting at ${String(distance)}`, 0, 1),
  }));
  rows.sort((a, b) => a.distance - b.distance);
  rows.forEach((row, index) => {
    if (rows[index - 1]?.distance === row.distance)
      throw unusable(messages.log.puttingTwice(row.distance));
  });
  return rows.map(({ distance, share }) => ({ distanceM: toMetres(distance, unit), share }));
}

function within(cell: PlainCell, label: string, low: number, high: number): number {
  if (typeof cell !== "number")
    throw unusable(messages.log.settingNotNumber(label, describeCell(cell)));
  if (cell < low || cell > high)
    throw unusable(messages.log.settingOutside(label, `${cell}`, `${low}`, `${high}`));
  return cell;
}
