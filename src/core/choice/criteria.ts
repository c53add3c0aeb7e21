/** What a player may choose by. */
import { COST_TIE, STROKES_TIE } from "../constants";
import type { Candidate } from "./candidates";
import { chanceOf } from "./chance";
import { leavesM } from "./leaves";
import { throwStrokes } from "./throwStrokes";
import type { Trouble } from "./trouble";

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
    const chance = chanceOf(thrown.row, target, circleM);
    return (at) => 1 - chance(thrown.powers[at]!);
  },
  tie: COST_TIE,
});

/** The mean distance left. */
export const byLeaves: Criterion = {
  costsOf:
    ({ thrown, target }) =>
    (at) =>
      leavesM(thrown.landings[at]!, target),
  tie: COST_TIE,
};
