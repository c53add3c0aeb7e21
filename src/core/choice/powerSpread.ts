/** How surely a disc is thrown at a power. */
import { SOFTNESS_COST } from "../constants";
import type { CardRow } from "../types";

/** ln(level, calm carry in m) of the next throw at one power ~ t(centre, scale) with the row's freedom. */
export interface PowerSpread {
  readonly centre: number;
  readonly scale: number;
}

/**
 * The next throw of a disc at `power`, a share of smooth above 0. Away from smooth the spread grows
 * (assumption: SOFTNESS_COST).
 *
 * @example
 * powerSpread(row, 1).centre // row.mu
 */
export const powerSpread = (
  { mu, scale, evidence }: Pick<CardRow, "mu" | "scale" | "evidence">,
  power: number,
): PowerSpread => ({
  centre: mu + Math.log(power),
  scale: Math.hypot(scale * Math.sqrt(1 + 1 / evidence), SOFTNESS_COST * (1 - power)),
});
