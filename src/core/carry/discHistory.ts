/** The throws of one disc as plain numbers, levelled, for the statistics. */
import { TREND_MOST_THROWS } from "../constants";
import type { BagDisc, Throw } from "../types";
import { NumberList } from "./numberList";
import { latest, type TimeSeries } from "./timeSeries";

/** How fast throws fade: age counts back from a day, and halves the weight once in so many days. */
export interface Ageing {
  readonly asOfDay: number;
  /** Infinity: never. */
  readonly memoryDays: number;
}

export class DiscHistory {
  /** Rows of this disc that do not count. */
  leftOut = 0;
  private readonly logs = new NumberList();
  /** NaN where a throw has no date. */
  private readonly days = new NumberList();
  /** rad, right positive; NaN where offline was not noted. */
  private readonly angles = new NumberList();

  constructor(
    readonly disc: string,
    readonly bag: BagDisc | null,
  ) {}

  get throws(): number {
    return this.logs.length;
  }

  /** `smoothCarryM` is what the carry of the throw comes to, level, calm and smooth. */
  add({ carryM, offlineM, day }: Throw, smoothCarryM: number): void {
    this.logs.push(Math.log(smoothCarryM));
    this.days.push(day ?? NaN);
    this.angles.push(offlineM === null ? NaN : Math.atan2(offlineM, carryM));
  }

  lnCarries(): Float64Array {
    return this.logs.view();
  }

  /** 2^(−age/memory) for each throw; without a date, or dated after that day, it has age 0. */
  weights({ asOfDay, memoryDays }: Ageing): Float64Array {
    const days = this.days.view();
    const weights = new Float64Array(days.length).fill(1);
    const fading = Math.LN2 / memoryDays;
    for (let index = 0; index < days.length; index++) {
      const ahead = days[index]! - asOfDay;
      if (ahead < 0) weights[index] = Math.exp(fading * ahead);
    }
    return weights;
  }

  /** Sideways angles where offline was noted, and the weight of each. */
  sideways(weights: Float64Array): { angles: Float64Array; weights: Float64Array } {
    const angles = this.angles.view();
    return { angles: known(angles, angles), weights: known(weights, angles) };
  }

  /** The latest dated carries, m, oldest first. */
  series(): TimeSeries {
    const days = this.days.view();
    const series = latest(known(days, days), known(this.logs.view(), days), TREND_MOST_THROWS);
    return { days: series.days, values: series.values.map(Math.exp) };
  }
}

/** The values at the places where `where` is a number. */
function known(values: Float64Array, where: Float64Array): Float64Array {
  const kept = new Float64Array(values.length);
  let count = 0;
  for (let index = 0; index < values.length; index++) {
    if (!Number.isNaN(where[index]!)) kept[count++] = values[index]!;
  }
  return kept.subarray(0, count);
}
