/** From throws to the card. */
import { TREND_MOST_THROWS } from "../constants";
import { DomainError } from "../errors";
import { discKey, softestPower } from "../log/names";
import { messages } from "../messages";
import type { BagDisc, Card, CardRow, LeftOut, Settings, Throw, ThrowLog } from "../types";
import { carryForm, type CarryForm, sideForm } from "./discForm";
import { levelling, type Levelling } from "./levelThrows";
import { moderate, priorVariance, type Variance } from "./moderation";
import { latest, NumberList, type TimeSeries } from "./statistics";
import { verdictOf } from "./wear";

// The throws of one disc as plain numbers, levelled, for the statistics.

/** How fast throws fade: age counts back from a day, and halves the weight once in so many days. */
export interface Ageing {
  readonly asOfDay: number;
  /** Infinity: never. */
  readonly memoryDays: number;
}

export class DiscHistory {
  /** The player's own rows of this disc that do not count. */
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

// Takes throws one by one and makes a card of them.

/** Keeps numbers and no throws, so that a full sheet passes through without filling the memory. */
export class CardMaker {
  private readonly byKey = new Map<string, DiscHistory>();
  /** Each spelling is looked at once only, for a log repeats few of them. */
  private readonly bySpelling = new Map<string, DiscHistory>();
  private readonly bag: ReadonlyMap<string, BagDisc>;
  private readonly smoothCarryM: Levelling;
  private readonly leftOut: LeftOut[] = [];
  private newestDay = 0;

  constructor(
    bag: readonly BagDisc[],
    private readonly settings: Settings,
  ) {
    this.bag = new Map(bag.map((disc) => [discKey(disc.disc), disc]));
    this.smoothCarryM = levelling(settings);
  }

  /** Counts a throw, or leaves it out where the flight cannot level it. */
  take(thrown: Throw): void {
    const history = this.historyOf(thrown.disc);
    try {
      history.add(thrown, this.smoothCarryM(thrown, history.bag?.type ?? null));
      if (thrown.day !== null && thrown.day > this.newestDay) this.newestDay = thrown.day;
    } catch (cause) {
      if (!(cause instanceof DomainError)) throw cause;
      const reason = messages.carry.notLevelled(thrown.row, cause.message);
      this.leave({ row: thrown.row, disc: thrown.disc, reason });
    }
  }

  leave(row: LeftOut): void {
    this.leftOut.push(row);
    if (row.otherPlayer === undefined) this.historyOf(row.disc).leftOut++;
  }

  card(): Card {
    const { settings } = this;
    const ageing: Ageing = {
      asOfDay: settings.asOfDay ?? this.newestDay,
      memoryDays: settings.memoryDays,
    };
    const known = [...this.byKey.values()]
      .filter(({ throws }) => throws > 0)
      .map((history) => {
        const weights = history.weights(ageing);
        const form = carryForm(history.lnCarries(), weights, settings.usualSpread);
        return { history, weights, form };
      });
    const own = known.map(({ form }) => form.own);
    const prior = priorVariance(own, settings.usualSpread);
    const rows = known.map((disc) => cardRow(disc, prior, settings.sideSpreadRad));
    return {
      rows: rows.sort((one, other) => other.mu - one.mu),
      population: { scale: Math.sqrt(prior.variance), freedom: prior.freedom },
      leftOut: this.leftOut.sort((one, other) => one.row - other.row),
    };
  }

  private historyOf(spelling: string): DiscHistory {
    let history = this.bySpelling.get(spelling);
    if (history) return history;
    const key = discKey(spelling);
    const bag = this.bag.get(key) ?? null;
    history =
      this.byKey.get(key) ?? new DiscHistory(bag?.disc ?? spelling.replace(/\s+/g, " "), bag);
    this.byKey.set(key, history);
    this.bySpelling.set(spelling, history);
    return history;
  }
}

interface Known {
  readonly history: DiscHistory;
  readonly weights: Float64Array;
  readonly form: CarryForm;
}

function cardRow(
  { history, weights, form }: Known,
  prior: Variance,
  usualSideRad: number,
): CardRow {
  const { bag } = history;
  const { variance, freedom } = moderate(prior, form.own);
  const sideways = history.sideways(weights);
  const series = history.series();
  return {
    disc: history.disc,
    type: bag?.type ?? null,
    line: bag?.line ?? "",
    softest: softestPower(bag?.type ?? null, bag?.softest ?? null),
    inBag: bag?.inBag ?? true,
    mu: form.mu,
    scale: Math.sqrt(variance),
    freedom,
    evidence: form.evidence,
    side: sideForm(sideways.angles, sideways.weights, usualSideRad),
    throws: history.throws,
    leftOut: history.leftOut,
    lastDay: series.days[series.days.length - 1] ?? null,
    verdict: verdictOf(series),
  };
}

/**
 * The card of a log: for each disc with a throw that counts, the centre of ln carry, its moderated
 * spread, and what is known sideways; longest first. Older throws count less, by their age before
 * the setting As of or else before the newest throw in the log, never before today; throws newer
 * than As of count fully. The bag, where given, tells type, line and whether a disc is in it; a disc
 * that it does not list is taken to be in it. No throws give a card without rows, and the usual
 * spread for the population. Linear in throws.
 *
 * @example
 * makeCard(readThrows(cells, settings), [], settings).rows[0]?.disc // the longest
 */
export function makeCard(log: ThrowLog, bag: readonly BagDisc[] | null, settings: Settings): Card {
  const maker = new CardMaker(bag ?? [], settings);
  for (const thrown of log.throws) maker.take(thrown);
  for (const row of log.leftOut) maker.leave(row);
  return maker.card();
}
