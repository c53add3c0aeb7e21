/** Which discs are changing. */
import { type Trend, trendOf } from "../../core/carry/wear";
import { attempt } from "../attempt";
import type { Book } from "../book/book";
import { oncePer } from "../book/oncePer";

export interface Drift {
  readonly disc: string;
  readonly trend: Trend;
}

/** A trend for every disc in the bag that has enough throws for one; changing ones first. */
export const driftsOf = oncePer(({ card, log, settings }: Book): readonly Drift[] =>
  card.rows
    .filter(({ inBag, verdict }) => inBag && verdict !== "too few")
    .flatMap(({ disc }) => {
      const trend = attempt(() => trendOf(disc, log, settings));
      return trend.ok ? [{ disc, trend: trend.value }] : [];
    })
    .sort((a, b) => rank(a) - rank(b)),
);

const rank = ({ trend }: Drift): number => (trend.verdict === "changing" ? 0 : 1);
