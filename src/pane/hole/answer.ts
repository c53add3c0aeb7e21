/** Everything that Hole says about one task. */
import { rankOptions } from "../../core/choice/rank";
import { playsLikeBandM, playsLikeParts } from "../../core/flight/playsLike";
import { conditionsOf } from "../../core/flight/air";
import { flightPath, windDriftM } from "../../core/flight/path";
import type { Card, Option, Settings } from "../../core/types";
import { attempt, type Answer } from "../attempt";
import type { Task } from "./task";

type Parts = ReturnType<typeof playsLikeParts>;
type Band = ReturnType<typeof playsLikeBandM>;
type Path = ReturnType<typeof flightPath>;

export interface HoleAnswer {
  readonly task: Task;
  readonly plays: Answer<{ readonly parts: Parts; readonly band: Band }>;
  readonly options: Answer<readonly Option[]>;
  readonly path: Answer<Path>;
  /** Sideways carry by the crosswind, right positive. */
  readonly drift: Answer<number>;
}

/** The parts fail each for itself: a hole out of everyone's reach still has a plays-like distance. */
export function answerHole(task: Task, card: Card, settings: Settings): HoleAnswer {
  const conditions = conditionsOf(settings);
  return {
    task,
    plays: attempt(() => ({
      parts: playsLikeParts(task, conditions, null),
      band: playsLikeBandM(task, conditions),
    })),
    options: attempt(() => rankOptions(task, card, settings)),
    path: attempt(() => flightPath(task, conditions, null)),
    drift: attempt(() => windDriftM(task.distanceM, task.crosswindMps, conditions, null)),
  };
}
