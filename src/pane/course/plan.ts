/** The plan of the course, and what it adds up to. */
import { planCourse, type PlannedHole } from "../../core/choice/plan";
import type { Hole } from "../../core/types";
import { attempt, type Answer } from "../attempt";
import type { Book } from "../book/book";
import { oncePer } from "../book/oncePer";

export interface Planned {
  readonly hole: Hole;
  readonly plan: PlannedHole;
}

/** One entry a hole, in the order of the course. */
export const planOf = oncePer(({ holes, card, settings }: Book): Answer<readonly Planned[]> =>
  attempt(() => planCourse(holes, card, settings).map((plan, at) => ({ hole: holes[at]!, plan }))),
);

export interface Totals {
  readonly holes: number;
  /** Holes that have an answer, and their expected strokes. */
  readonly answered: number;
  readonly strokes: number;
  /** Par of the answered holes; null where one of them has none. */
  readonly par: number | null;
}

export function totalsOf(planned: readonly Planned[]): Totals {
  const answered = planned.filter(({ plan }) => plan.option !== null);
  const pars = answered.map(({ hole }) => hole.par);
  return {
    holes: planned.length,
    answered: answered.length,
    strokes: answered.reduce((sum, { plan }) => sum + plan.option!.strokes, 0),
    par: pars.includes(null) ? null : pars.reduce<number>((sum, par) => sum + (par ?? 0), 0),
  };
}
