/** The discs that a task can be played with. */
import { LONGEST_HOLE_M } from "../constants";
import { unavailable } from "../errors";
import type { Conditions } from "../flight/conditions";
import { messages } from "../messages";
import type { Hole, Shot } from "../types";
import { suitsLine } from "./bagInHand";
import { targetsOf, type Target } from "./target";
import type { Throwable } from "./throwable";

/** A shot that discs are ranked for; a hole of a course is one. */
export type Task = Shot & Partial<Pick<Hole, "longTroubleM" | "shortTroubleM" | "line">>;

/** A disc and what the task asks of it. */
export interface Candidate {
  readonly thrown: Throwable;
  readonly target: Target;
}

/**
 * Discs whose line suits and for which the flight has an answer, in the order given. Throws
 * `unavailable` with the reason where there is none.
 */
export function candidates(
  task: Task,
  discs: readonly Throwable[],
  conditions: Conditions,
): Candidate[] {
  if (task.distanceM > LONGEST_HOLE_M) throw unavailable(messages.choice.tooLong(LONGEST_HOLE_M));
  const line = task.line ?? "";
  const suited = discs.filter(({ row }) => suitsLine(row.line, line));
  if (suited.length === 0) throw unavailable(messages.choice.noLine(line));
  const targetFor = targetsOf(task, conditions);
  const found = suited.flatMap((thrown) => {
    const target = targetFor(thrown.row.type);
    return target ? [{ thrown, target }] : [];
  });
  if (found.length === 0) throw unavailable(messages.choice.outOfReach(suited[0]!.row.disc));
  return found;
}
