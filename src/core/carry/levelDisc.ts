/** The throws of one disc, levelled and weighted, as plain numbers for the statistics. */
import { TREND_MOST_THROWS } from "../constants";
import { DomainError } from "../errors";
import { messages } from "../messages";
import type { DiscType, LeftOut, Throw } from "../types";
import type { DiscThrows } from "./discThrows";
import type { Levelling } from "./levelling";
import { latest, type TimeSeries } from "./timeSeries";

export interface LevelDisc {
  /** ln of level, calm, smooth carry in m, and the weight of each by its age. */
  readonly lnCarries: Float64Array;
  readonly weights: Float64Array;
  /** Sideways angles, rad, where offline was noted, and the weight of each. */
  readonly sideAngles: readonly number[];
  readonly sideWeights: readonly number[];
  /** Latest dated carries, m, oldest first. */
  readonly series: TimeSeries;
  readonly lastDay: number | null;
  readonly leftOut: readonly LeftOut[];
}

/** How fast throws fade: age counts from a day, and halves the weight once in so many days. */
export interface Ageing {
  readonly asOfDay: number;
  /** Infinity: never. */
  readonly memoryDays: number;
}

export const NO_AGE: Ageing = { asOfDay: 0, memoryDays: Infinity };

/**
 * Levels every throw of a disc and weighs it by 2^(−age/memory). A throw without a date, or dated
 * after `asOfDay`, has age 0. A throw that the flight cannot level is left out.
 */
export function levelDisc(group: DiscThrows, smoothCarryM: Levelling, ageing: Ageing): LevelDisc {
  const { throws, bag } = group;
  const lnCarries = new Float64Array(throws.length);
  const weights = new Float64Array(throws.length);
  const days = new Float64Array(throws.length);
  const carriesM = new Float64Array(throws.length);
  const sideAngles: number[] = [];
  const sideWeights: number[] = [];
  const leftOut: LeftOut[] = [];
  let count = 0;
  let dated = 0;
  let lastDay: number | null = null;
  for (const thrown of throws) {
    const { day, offlineM, carryM: thrownM } = thrown;
    const carryM = tryLevelling(thrown, bag?.type ?? null, smoothCarryM);
    if (typeof carryM === "string") {
      leftOut.push({ row: thrown.row, disc: thrown.disc, reason: carryM });
      continue;
    }
    const weight = day === null ? 1 : weightAt(day, ageing);
    lnCarries[count] = Math.log(carryM);
    weights[count++] = weight;
    if (offlineM !== null) {
      sideAngles.push(Math.atan2(offlineM, thrownM));
      sideWeights.push(weight);
    }
    if (day === null) continue;
    days[dated] = day;
    carriesM[dated++] = carryM;
    if (lastDay === null || day > lastDay) lastDay = day;
  }
  return {
    lnCarries: lnCarries.subarray(0, count),
    weights: weights.subarray(0, count),
    sideAngles,
    sideWeights,
    series: latest(days.subarray(0, dated), carriesM.subarray(0, dated), TREND_MOST_THROWS),
    lastDay,
    leftOut,
  };
}

const weightAt = (day: number, { asOfDay, memoryDays }: Ageing): number =>
  day >= asOfDay ? 1 : 2 ** ((day - asOfDay) / memoryDays);

/** The levelled carry, or why there is none. */
function tryLevelling(
  thrown: Throw,
  type: DiscType | null,
  smoothCarryM: Levelling,
): number | string {
  try {
    return smoothCarryM(thrown, type);
  } catch (cause) {
    if (!(cause instanceof DomainError)) throw cause;
    return messages.carry.notLevelled(thrown.row, cause.message);
  }
}
