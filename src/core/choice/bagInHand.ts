/** The discs that can be chosen from. */
import { DRIFT_DOUBT, LONGEST_HOLE_M } from "../constants";
import { unavailable } from "../errors";
import type { Conditions } from "../flight/air";
import { discKey } from "../log/names";
import { messages } from "../messages";
import type { Card, CardRow, Hole, Settings, Shot } from "../types";
import { courseForm, type ThrowForm } from "./courseForm";
import { COARSE, FINE, type Fineness, landing, type Landing } from "./landing";
import { powersOf } from "./power";
import { doubtOf, driftsOf, type Target, targetsOf } from "./target";
import type { Trouble } from "./trouble";

/** The rows of the discs that are in the bag, longest first; throws `unavailable` where there is none. */
export function bagInHand({ rows }: Card): CardRow[] {
  if (rows.length === 0) throw unavailable(messages.carry.noThrows());
  const inHand = rows.filter(({ inBag }) => inBag);
  if (inHand.length === 0) throw unavailable(messages.choice.emptyBag());
  return inHand;
}

/** Whether a disc may be thrown where a line is asked for: one without a line of its own always may. */
export function suitsLine(discLine: string, line: string): boolean {
  const [own, asked] = [discKey(discLine), discKey(line)];
  return own === "" || asked === "" || own === asked;
}

// A disc with all that it may be thrown at.

export interface Throwable {
  readonly row: CardRow;
  /** How it is thrown on the course. */
  readonly form: ThrowForm;
  /** Softest first. */
  readonly powers: readonly number[];
  /** Where throws at power number `at` may end, towards a target. */
  readonly landingAt: (at: number, target: Target) => Landing;
  readonly coarseLandingAt: (at: number, target: Target) => Landing;
}

export const throwable = (row: CardRow, settings: Settings): Throwable =>
  thrownBy(row, courseForm(row, settings), powersOf(row, settings));

function thrownBy(row: CardRow, form: ThrowForm, powers: readonly number[]): Throwable {
  const landings = (fineness: Fineness) => {
    const sure: Landing[] = [];
    return (at: number, target: Target): Landing => {
      const doubt = doubtOf(target);
      if (doubt > 0) return landing(form, powers[at]!, fineness, doubt);
      return (sure[at] ??= landing(form, powers[at]!, fineness));
    };
  };
  return { row, form, powers, landingAt: landings(FINE), coarseLandingAt: landings(COARSE) };
}

// The discs that a task can be played with.

/** A shot that discs are ranked for; a hole of a course is one. */
export type Task = Shot & Trouble & Partial<Pick<Hole, "crosswindMps" | "line">>;

/** A disc and what the task asks of it. */
export interface Candidate {
  readonly thrown: Throwable;
  readonly target: Target;
  /** How far a crosswind carries the throw, right positive; the player aims off it. */
  readonly driftM: number;
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
  const driftFor = driftsOf(task, conditions);
  const found = suited.flatMap((thrown) => {
    const target = targetFor(thrown.row);
    const driftM = driftFor(thrown.row);
    return target ? [{ thrown: blownBy(driftM, thrown, task), target, driftM }] : [];
  });
  if (found.length === 0) throw unavailable(messages.choice.outOfReach(suited[0]!.row.disc));
  return found;
}

/** The disc with its aim in doubt by a share of what a crosswind carries it. */
function blownBy(driftM: number, thrown: Throwable, { distanceM }: Task): Throwable {
  if (driftM === 0) return thrown;
  const { row, form, powers } = thrown;
  const scaleRad = Math.hypot(form.side.scaleRad, (DRIFT_DOUBT * driftM) / distanceM);
  return thrownBy(row, { ...form, side: { ...form.side, scaleRad } }, powers);
}
