/** Ranking the discs for one shot. */
import { LEAST_CHANCE } from "../constants";
import { unavailable } from "../errors";
import { conditionsOf } from "../flight/conditions";
import { messages } from "../messages";
import type { Card, Option, Settings } from "../types";
import { candidates, type Candidate, type Task } from "./candidates";
import { byChance, byLeaves, byStrokes, type Criterion } from "./criteria";
import { gameOf } from "./game";
import { optionOf } from "./optionOf";
import { picksBy, type Pick } from "./picks";
import { troubleInPlay } from "./trouble";

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
