/** The throws of one disc over time. */
import { DomainError, unavailable } from "../errors";
import { discKey } from "../log/names";
import { messages } from "../messages";
import type { BagDisc, Settings, ThrowLog } from "../types";
import { levelling, noSuchDisc } from "./levelThrows";

export interface SeriesPoint {
  readonly day: number;
  /** As thrown. */
  readonly carryM: number;
  /** The same throw on level ground in calm standard air, at smooth power; null where the flight has no answer. */
  readonly levelM: number | null;
  /** Sideways miss, right positive; null where it was not noted. */
  readonly sideM: number | null;
}

/**
 * The dated throws of one disc, oldest first: what a chart of its carry over time needs. Throws
 * of one day stay in the order of the log.
 *
 * @param bag Tells the type of the disc, for levelling; may be empty.
 * @throws `unavailable` for a disc without a valid throw, and where none of its throws has a date.
 * @example
 * seriesOf("Copper mid", log, [], settings)[0] // { day: 46154, carryM: 91.7, levelM: 92.3, sideM: null }
 */
export function seriesOf(
  disc: string,
  log: ThrowLog,
  bag: readonly BagDisc[],
  settings: Settings,
): SeriesPoint[] {
  const key = discKey(disc);
  const own = log.throws.filter((thrown) => discKey(thrown.disc) === key);
  if (own.length === 0) throw noSuchDisc(disc, log.leftOut, log.throws);
  const type = bag.find((listed) => discKey(listed.disc) === key)?.type ?? null;
  const smoothCarryM = levelling(settings);
  const points = own.flatMap((thrown) => {
    if (thrown.day === null) return [];
    let levelM: number | null = null;
    try {
      levelM = smoothCarryM(thrown, type);
    } catch (cause) {
      if (!(cause instanceof DomainError)) throw cause;
    }
    return [{ day: thrown.day, carryM: thrown.carryM, levelM, sideM: thrown.offlineM }];
  });
  if (points.length === 0) throw unavailable(messages.carry.noDatedThrow(disc.trim()));
  return points.sort((one, other) => one.day - other.day);
}
