/** Ranking the discs for one shot. */
import { AIM_STEP_M, COST_TIE, LEAST_CHANCE, MOST_AIM_M, STROKES_TIE } from "../constants";
import { unavailable } from "../errors";
import { type Conditions, conditionsOf } from "../flight/air";
import { messages } from "../messages";
import type { Card, NextThrow, Option, Settings } from "../types";
import { type Candidate, candidates, type Task } from "./bagInHand";
import { chanceOf } from "./chance";
import { finishM, leavesM } from "./landing";
import { bestFirst, downhill, leastOf, powerThatReaches, type Weighed } from "./power";
import { type Game, gameOf, putts, shareMade, throwStrokes } from "./strokes";
import { orWhy } from "./target";
import { awayFrom, endsOf, hasTrouble, meanLeftM, type Trouble } from "./trouble";

// What a player may choose by.

/** What a disc costs at each of its powers and each aim, m right of the target, less being better; and how close two costs tie. */
export interface Criterion {
  readonly costsOf: (candidate: Candidate) => (at: number, aimM: number) => number;
  readonly tie: number;
  readonly trouble: Trouble;
}

/** Expected strokes to hole out, `table` saying what each distance left takes. */
export const byStrokes = (trouble: Trouble, table: Float64Array): Criterion => ({
  costsOf:
    ({ thrown, target }) =>
    (at, aimM) =>
      throwStrokes(thrown, at, aimM, target, trouble, table),
  tie: STROKES_TIE,
  trouble,
});

/** The chance to miss the circle. */
export const byChance = (trouble: Trouble, circleM: number): Criterion => ({
  costsOf: ({ thrown, target }) => {
    const straight = chanceOf(thrown.form, target, circleM, { trouble });
    return (at, aimM) => {
      const chance =
        aimM === 0 ? straight : chanceOf(thrown.form, target, circleM, { aimM, trouble });
      return 1 - chance(thrown.powers[at]!);
    };
  },
  tie: COST_TIE,
  trouble,
});

/** The mean distance left. */
export const byLeaves = (trouble: Trouble): Criterion => ({
  costsOf: (candidate) => (at, aimM) => meanLeaves(candidate, at, aimM, trouble),
  tie: COST_TIE,
  trouble,
});

const meanLeaves = (
  { thrown, target }: Candidate,
  at: number,
  aimM: number,
  trouble: Trouble,
): number =>
  hasTrouble(trouble)
    ? meanLeftM(endsOf(thrown.form, thrown.powers[at]!, target, trouble, aimM), target)
    : leavesM(thrown.landingAt(at, target), target);

// Picking a power and an aim for each disc, and an order of discs.

/**
 * A candidate at the power number `at`, its line `aimM` right of the target. It is chosen for the least
 * that the disc can cost, which is within a tie of what it costs at that power.
 */
export interface Pick extends Candidate, Weighed {
  readonly at: number;
  readonly aimM: number;
}

/**
 * Each candidate at its best power and aim, best first; without those that have no finite cost. The best
 * power is the one nearest smooth whose cost, and every cost on the way to it, is within the tie of the
 * least.
 */
export function picksBy(candidates: readonly Candidate[], criterion: Criterion): Pick[] {
  const picks = candidates
    .map((candidate) => pickOf(candidate, criterion))
    .filter(({ cost }) => cost < Infinity);
  return bestFirst(picks, criterion.tie);
}

function pickOf(candidate: Candidate, criterion: Criterion): Pick {
  const { powers } = candidate.thrown;
  const least = leastCost(candidate, criterion);
  const costAt = criterion.costsOf(candidate);
  let { at } = least;
  const fromSmooth = (index: number): number => Math.abs(powers[index]! - 1);
  for (const step of [1, -1]) {
    for (let next = at + step; next >= 0 && next < powers.length; next += step) {
      if (!(fromSmooth(next) < fromSmooth(at))) break;
      if (!(costAt(next, least.aimM) < least.cost + criterion.tie)) break;
      at = next;
    }
  }
  return { ...candidate, at, aimM: least.aimM, power: powers[at]!, cost: least.cost };
}

const AIMS = Math.round(MOST_AIM_M / AIM_STEP_M) + 1;
/** Power and aim settle against each other in two or three turns. */
const MOST_TURNS = 4;

/** The power and the aim of least cost; straight at the target but for trouble at one side, or more at one. */
export function leastCost(
  candidate: Candidate,
  { costsOf, trouble }: Criterion,
): { at: number; aimM: number; cost: number } {
  const count = candidate.thrown.powers.length;
  const costAt = costsOf(candidate);
  // Without trouble costs fall towards the power that gets there and rise beyond it; trouble makes more valleys.
  const straight = hasTrouble(trouble)
    ? leastOf(count, (at) => costAt(at, 0))
    : downhill(
        powerThatReaches(candidate.thrown.form, candidate.thrown.powers, candidate.target),
        count,
        (at) => costAt(at, 0),
      );
  const away = awayFrom(trouble);
  if (away === 0) return { at: straight.index, aimM: 0, cost: straight.cost };
  const aimOf = (step: number): number => away * AIM_STEP_M * step;
  let at = straight.index;
  let step = 0;
  let cost = straight.cost;
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const aim = leastOf(AIMS, (next) => costAt(at, aimOf(next)));
    const power = downhill(at, count, (next) => costAt(next, aimOf(aim.index)));
    if (!(power.cost < cost - COST_TIE)) break;
    [at, step, cost] = [power.index, aim.index, power.cost];
  }
  return { at, aimM: aimOf(step) + 0, cost };
}

// A pick with all its figures.

/** `strokes` are taken as already worked out, so that the option says what it was chosen by. */
export function optionOf(
  pick: Pick,
  strokes: number,
  circleM: number,
  trouble: Trouble,
): Omit<Option, "then"> {
  const { thrown, target, driftM, power, at, aimM } = pick;
  const { row, form } = thrown;
  return {
    disc: row.disc,
    putt: false,
    power,
    playsLikeM: target.playsLikeM,
    chance: chanceOf(form, target, circleM, { aimM, trouble })(power),
    leavesM: meanLeaves(pick, at, aimM, trouble),
    strokes,
    longM: finishM(form, power, target),
    aimM: aimM - target.distanceM * Math.tan(row.side.biasRad) - driftM,
  };
}

/** What stands in the place of a disc within the circle. */
export const PUTT = "Putt";

const puttOption = ({ distanceM }: Task, { putting }: Settings): Option => {
  const chance = shareMade(distanceM, putting);
  return {
    disc: PUTT,
    putt: true,
    power: 1,
    playsLikeM: distanceM,
    chance,
    leavesM: 0,
    strokes: putts(distanceM, putting),
    longM: 0,
    aimM: 0,
    then: [],
  };
};

/**
 * Every disc in the bag for a shot, each at its best power, best first. By the setting Aim for: least
 * expected strokes, those within 0.005 to the power nearest 1; or the greatest chance of the circle, and
 * by what a throw leaves where no disc has 2 %. Discs of another line than the one asked for are left
 * out, and so are discs that the flight cannot bring there. Throws `unavailable` with the reason where
 * none remains. Within the circle the one answer is to putt, its chance that of holing out. `most` is how
 * many to answer with; all where not given.
 *
 * @example
 * rankOptions({ distanceM: 91, riseM: 0, headwindMps: 0 }, card, DEFAULT_SETTINGS)[0]?.disc
 */
export function rankOptions(task: Task, card: Card, settings: Settings, most = Infinity): Option[] {
  const game = gameOf(card, settings);
  if (task.distanceM <= settings.circleM) return [puttOption(task, settings)];
  const conditions = conditionsOf(settings);
  return picksOf(task, game, conditions, settings)
    .slice(0, most)
    .map(({ pick, strokes }) => {
      const option = optionOf(pick, strokes, settings.circleM, task);
      return { ...option, then: thenOf(task, option.longM, game, conditions, settings) };
    });
}

/** A pick with the strokes that it takes, whatever it was chosen by. */
export interface RankedPick {
  readonly pick: Pick;
  readonly strokes: number;
}

/** The picks behind `rankOptions`. */
export function picksOf(
  task: Task,
  game: Game,
  conditions: Conditions,
  settings: Settings,
): RankedPick[] {
  const able = candidates(task, game.discs, conditions);
  const strokesCriterion = byStrokes(task, game.strokesFor(task.distanceM));
  const picks = picksFor(able, strokesCriterion, settings);
  if (picks.length === 0) throw unavailable(messages.choice.onlyTrouble());
  return picks.map((pick) => ({
    pick,
    strokes: strokesCriterion.costsOf(pick)(pick.at, pick.aimM),
  }));
}

function picksFor(
  able: readonly Candidate[],
  strokesCriterion: Criterion,
  { aimFor, circleM }: Settings,
): Pick[] {
  if (aimFor === "strokes") return picksBy(able, strokesCriterion);
  const { trouble } = strokesCriterion;
  const getsAway = (pick: Pick): boolean =>
    strokesCriterion.costsOf(pick)(pick.at, pick.aimM) < Infinity;
  const picks = picksBy(able, byChance(trouble, circleM)).filter(getsAway);
  return picks.some(({ cost }) => 1 - cost >= LEAST_CHANCE)
    ? picks
    : picksBy(able, byLeaves(trouble)).filter(getsAway);
}

// The throws that follow.

/** A plan of more throws than this is none. */
const MOST_THROWS = 8;

/**
 * The throws after one that ends `longM` beyond the target, until the circle: each time the disc and power
 * of least strokes from where the middle throw before it ends, with what remains of the rise in
 * proportion, the same wind, and no trouble.
 */
function thenOf(
  task: Task,
  longM: number,
  game: Game,
  conditions: Conditions,
  { circleM }: Settings,
): NextThrow[] {
  const next: NextThrow[] = [];
  let leftM = longM;
  while (Math.abs(leftM) > circleM && next.length < MOST_THROWS) {
    const distanceM = Math.abs(leftM);
    // A throw from behind the target turns round.
    const turned = leftM > 0 ? -1 : 1;
    const shot: Task = {
      distanceM,
      riseM: turned * task.riseM * (distanceM / task.distanceM),
      headwindMps: turned * task.headwindMps,
      crosswindMps: turned * (task.crosswindMps ?? 0),
    };
    const { answer: able } = orWhy(() => candidates(shot, game.discs, conditions));
    if (!able) break;
    const [pick] = picksBy(able, byStrokes({}, game.strokesFor(distanceM)));
    const { thrown, target, power } = pick!;
    const chance = chanceOf(thrown.form, target, circleM)(power);
    next.push({ disc: thrown.row.disc, power, distanceM, chance });
    leftM = finishM(thrown.form, power, target);
  }
  return next;
}
