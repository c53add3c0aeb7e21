/** Takes throws one by one and makes a card of them. */
import { DomainError } from "../errors";
import { conditionsOf } from "../flight/conditions";
import { discKey } from "../log/discKey";
import { softestPower } from "../log/discTypes";
import { messages } from "../messages";
import type { BagDisc, Card, CardRow, LeftOut, Settings, Throw } from "../types";
import { carryForm, type CarryForm } from "./carryForm";
import { DiscHistory, type Ageing } from "./discHistory";
import { levelling, type Levelling } from "./levelling";
import { moderate, priorVariance, type Variance } from "./moderation";
import { sideForm } from "./sideForm";
import { verdictOf } from "./trend";

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
    this.smoothCarryM = levelling(conditionsOf(settings));
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
    this.historyOf(row.disc).leftOut++;
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
