/** From throws to the card. */
import { conditionsOf } from "../flight/conditions";
import type { BagDisc, Card, CardRow, LeftOut, Settings, ThrowLog } from "../types";
import { carryForm, type CarryForm } from "./carryForm";
import { discThrows, type DiscThrows } from "./discThrows";
import { levelDisc, type LevelDisc } from "./levelDisc";
import { levelling } from "./levelling";
import { moderate, priorVariance, type Variance } from "./moderation";
import { sideForm } from "./sideForm";
import { verdictOf } from "./trend";

/** One disc on its way to the card. */
interface Known {
  readonly group: DiscThrows;
  readonly level: LevelDisc;
  readonly form: CarryForm;
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
  const ageing = {
    asOfDay: settings.asOfDay ?? newestDay(log),
    memoryDays: settings.memoryDays,
  };
  const smoothCarryM = levelling(conditionsOf(settings));
  const known: Known[] = [];
  const notLevelled: (readonly LeftOut[])[] = [];
  for (const group of discThrows(log, bag ?? [])) {
    const level = levelDisc(group, smoothCarryM, ageing);
    notLevelled.push(level.leftOut);
    if (level.lnCarries.length === 0) continue;
    known.push({
      group,
      level,
      form: carryForm(level.lnCarries, level.weights, settings.usualSpread),
    });
  }
  const prior = priorVariance(
    known.map(({ form }) => form.own),
    settings.usualSpread,
  );
  return {
    rows: known.map((disc) => cardRow(disc, prior, settings)).sort((a, b) => b.mu - a.mu),
    population: { scale: Math.sqrt(prior.variance), freedom: prior.freedom },
    leftOut: log.leftOut.concat(...notLevelled).sort((a, b) => a.row - b.row),
  };
}

function cardRow({ group, level, form }: Known, prior: Variance, settings: Settings): CardRow {
  const { variance, freedom } = moderate(prior, form.own);
  return {
    disc: group.disc,
    type: group.bag?.type ?? null,
    line: group.bag?.line ?? "",
    inBag: group.bag?.inBag ?? true,
    mu: form.mu,
    scale: Math.sqrt(variance),
    freedom,
    evidence: form.evidence,
    side: sideForm(level.sideAngles, level.sideWeights, settings.sideSpreadRad),
    throws: level.lnCarries.length,
    leftOut: group.leftOut.length + level.leftOut.length,
    lastDay: level.lastDay,
    verdict: verdictOf(level.series),
  };
}

/** 0 where no throw has a date: then no throw has an age either. */
function newestDay({ throws }: ThrowLog): number {
  let newest = 0;
  for (const { day } of throws) if (day !== null && day > newest) newest = day;
  return newest;
}
