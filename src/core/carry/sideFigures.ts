/** From the sideways figures of one row of a card back to what is known sideways. */
import { LEAST_SPREAD, PRIOR_FREEDOM } from "../constants";
import type { SideForm } from "../types";

/** Figures of a card in m; NaN where the card does not give one. */
export interface SideFigures {
  readonly carry: number;
  readonly side: number;
  readonly aim: number;
  readonly throws: number;
}

/**
 * Scale = Side/Carry, bias = −atan(Aim/Carry), and the freedom of the prior and of the throws: exact
 * for a card that we printed. A Side without a count of throws is worth one; without a Side, the
 * usual spread stands.
 */
export function sideFromFigures(figures: SideFigures, usualSpreadRad: number): SideForm {
  const { carry, side, aim } = figures;
  const known = side / carry >= LEAST_SPREAD;
  const throws = known ? (figures.throws > 0 ? figures.throws : 1) : 0;
  return {
    biasRad: known && Number.isFinite(aim) ? -Math.atan(aim / carry) : 0,
    scaleRad: known ? side / carry : usualSpreadRad,
    freedom: PRIOR_FREEDOM + Math.max(0, throws - 1),
    throws,
  };
}
