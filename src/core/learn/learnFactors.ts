/** What rounds teach about slope, wind and course. */
import { rowOf } from "../carry/levelThrows";
import { tQuantile } from "../carry/student";
import { powerSpread } from "../choice/chance";
import { LEARNT_BEFORE, NORMAL_UPPER_TENTH, UPPER_TENTH } from "../constants";
import { DomainError, unavailable } from "../errors";
import { type Conditions, conditionsOf, FULL_EFFECT } from "../flight/air";
import { playsLikeParts } from "../flight/playsLike";
import { messages } from "../messages";
import type { Card, CardRow, LeftOut, RoundRow, Settings } from "../types";
import { updateBeliefs, type Belief, type Observation } from "./updateBeliefs";

/** A row rests on slope or wind where their part in its plays-like distance is more than this, m. */
const NOTICEABLE_M = 0.01;

/** A factor, how sure it is (one standard deviation), and how many rows it rests on. */
export interface Learnt extends Belief {
  readonly rows: number;
}

export interface Factors {
  /** How much of the modelled effect of rise, and of wind and air, this player meets. */
  readonly uphill: Learnt;
  readonly wind: Learnt;
  /** How much farther than in the field the discs carry on the course, as a share. */
  readonly course: Learnt;
  /** Rows that could not be used, and why. */
  readonly leftOut: readonly LeftOut[];
}

/**
 * Factors learnt from rounds. Each throw says p·carry·(1 + b) − (D + aR + cW) = finish·D* / D + noise, with
 * the plays-like distance D* split into distance D, rise R, and wind and air W, all by the model with
 * factors 1; the noise has the 80 % interval of that throw. Normal regression from beliefs b 0 ± 0.05,
 * a 1 ± 0.3, c 1 ± 0.5. Rows of discs that the card does not know, or without a flight, are left out;
 * throws `unavailable` where no row is left.
 */
export function learnFactors(rounds: readonly RoundRow[], card: Card, settings: Settings): Factors {
  const conditions = { ...conditionsOf(settings), ...FULL_EFFECT };
  const observations: Observation[] = [];
  const leftOut: LeftOut[] = [];
  for (const round of rounds) {
    if (round.finishM === null) continue;
    try {
      observations.push(observe(round, round.finishM, rowOf(card, round.disc), conditions));
    } catch (thrown) {
      if (!(thrown instanceof DomainError)) throw thrown;
      leftOut.push({ row: round.row, disc: round.disc, reason: thrown.message });
    }
  }
  if (observations.length === 0) throw unavailable(whyNone(leftOut));
  const { course, uphill, wind } = LEARNT_BEFORE;
  const learnt = updateBeliefs([course, uphill, wind], observations).map((belief, factor) => ({
    ...belief,
    rows: observations.filter(({ inputs }) => Math.abs(inputs[factor]!) > NOTICEABLE_M).length,
  }));
  return { course: learnt[0]!, uphill: learnt[1]!, wind: learnt[2]!, leftOut };
}

function observe(
  round: RoundRow,
  finishM: number,
  row: CardRow,
  conditions: Conditions,
): Observation {
  const { distanceM, slopeM, windM, airM, totalM } = playsLikeParts(round, conditions, row.type);
  const carryM = round.power * Math.exp(row.mu);
  const spread =
    (powerSpread(row, round.power).scale * tQuantile(UPPER_TENTH, row.freedom)) /
    NORMAL_UPPER_TENTH;
  return {
    inputs: [carryM, -slopeM, -(windM + airM)],
    output: (finishM * totalM) / distanceM - carryM + distanceM,
    noiseSd: spread * carryM,
  };
}

const whyNone = ([first]: readonly LeftOut[]): string =>
  first ? messages.learn.noneUsable(first.row, first.reason) : messages.learn.noRows();
