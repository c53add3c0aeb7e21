/** Ranking the discs for one shot. */
import { COST_TIE, LEAST_CHANCE, STROKES_TIE } from "../constants";
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/air";
import { messages } from "../messages";
import type { Card, Option, Settings } from "../types";
import { type Candidate, candidates, type Task } from "./bagInHand";
import { chanceOf } from "./chance";
import { finishM, leavesM } from "./landing";
import { bestFirst, leastOf, type Weighed } from "./power";
import { gameOf, throwStrokes } from "./strokes";
import { type Trouble, troubleInPlay } from "./trouble";

// What a player may choose by.

/** What a disc costs at each of its powers, less being better, and how close two costs tie. */
export interface Criterion {
  readonly costsOf: (candidate: Candidate) => (at: number) => number;
  readonly tie: number;
}

/** Expected strokes to hole out, `table` saying what each distance left takes. */
export const byStrokes = (trouble: Trouble, table: Float64Array): Criterion => ({
  costsOf:
    ({ thrown, target }) =>
    (at) =>
      throwStrokes(thrown, at, target, trouble, table),
  tie: STROKES_TIE,
});

/** The chance to miss the circle. */
export const byChance = (circleM: number): Criterion => ({
  costsOf: ({ thrown, target }) => {
    const chance = chanceOf(thrown.form, target, circleM);
    return (at) => 1 - chance(thrown.powers[at]!);
  },
  tie: COST_TIE,
});

/** The mean distance left. */
export const byLeaves: Criterion = {
  costsOf:
    ({ thrown, target }) =>
    (at) =>
      leavesM(thrown.landingAt(at, target), target),
  tie: COST_TIE,
};

// Picking a power for each disc, and an order of discs.

/** A candidate at the power number `at`, chosen for its cost. */
export interface Pick extends Candidate, Weighed {
  readonly at: number;
}

/**
 * Each candidate at its best power, best first; without those that have no finite cost. The best power
 * is the one nearest smooth whose cost, and every cost on the way to it, is within the tie of the least.
 */
export function picksBy(candidates: readonly Candidate[], criterion: Criterion): Pick[] {
  const picks = candidates
    .map((candidate) => pickOf(candidate, criterion))
    .filter(({ cost }) => cost < Infinity);
  return bestFirst(picks, criterion.tie);
}

function pickOf(candidate: Candidate, { costsOf, tie }: Criterion): Pick {
  const { powers } = candidate.thrown;
  const costAt = costsOf(candidate);
  const least = leastOf(powers.length, costAt);
  let { index: at, cost } = least;
  const fromSmooth = (index: number): number => Math.abs(powers[index]! - 1);
  for (const step of [1, -1]) {
    for (let next = at + step; next >= 0 && next < powers.length; next += step) {
      if (!(fromSmooth(next) < fromSmooth(at))) break;
      const nextCost = costAt(next);
      if (!(nextCost < least.cost + tie)) break;
      at = next;
      cost = nextCost;
    }
  }
  return { ...candidate, at, power: powers[at]!, cost };
}

// A pick with all its figures.

/** `strokes` are taken as already worked out, so that the option says what it was chosen by. */
export function optionOf(
  { thrown: { row, form, landingAt }, target, power, at }: Pick,
  strokes: number,
  circleM: number,
): Option {
  return {
    disc: row.disc,
    power,
    playsLikeM: target.playsLikeM,
    chance: chanceOf(form, target, circleM)(power),
    leavesM: leavesM(landingAt(at, target), target),
    strokes,
    longM: finishM(form, power, target),
    aimM: -target.distanceM * Math.tan(row.side.biasRad),
    then: [],
  };
}

/**
 * Every disc in the bag for a shot, each at its best power, best first. By the setting Aim for: least
 * expected strokes, those within 0.005 to the power nearest 1; or the greatest chance of the circle, and
 * by what a throw leaves where no disc has 2 %. Discs of another line than the one asked for are left
 * out, and so are discs that the flight cannot bring there. Throws `unavailable` with the reason where
 * none remains. `most` is how many to answer with; all where not given.
 *
 * @example
 * rankOptions({ distanceM: 91, riseM: 0, headwindMps: 0 }, card, DEFAULT_SETTINGS)[0]?.disc
 */
export function rankOptions(task: Task, card: Card, settings: Settings, most = Infinity): Option[] {
  const { discs, strokesFor } = gameOf(card, settings);
  const able = candidates(task, discs, conditionsOf(settings));
  const strokesCriterion = byStrokes(troubleInPlay(task, able), strokesFor(task.distanceM));
  const picks = picksFor(able, strokesCriterion, settings);
  if (picks.length === 0) throw unavailable(messages.choice.onlyTrouble());
  return picks
    .slice(0, most)
    .map((pick) => optionOf(pick, strokesCriterion.costsOf(pick)(pick.at), settings.circleM));
}

function picksFor(
  able: readonly Candidate[],
  strokesCriterion: Criterion,
  { aimFor, circleM }: Settings,
): Pick[] {
  if (aimFor === "strokes") return picksBy(able, strokesCriterion);
  const outOfTrouble = (pick: Pick): boolean => strokesCriterion.costsOf(pick)(pick.at) < Infinity;
  const picks = picksBy(able, byChance(circleM)).filter(outOfTrouble);
  return picks.some(({ cost }) => 1 - cost >= LEAST_CHANCE)
    ? picks
    : picksBy(able, byLeaves).filter(outOfTrouble);
}
