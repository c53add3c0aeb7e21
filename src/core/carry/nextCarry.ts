/** Where the next smooth throw of a disc may stop. */
import { UPPER_TENTH } from "../constants";
import type { CardRow } from "../types";
import { tQuantile } from "./student";

export interface NextCarry {
  readonly lowM: number;
  readonly carryM: number;
  readonly highM: number;
}

/**
 * Smooth carry of a row of the card, m, with the bounds that eight of ten next throws fall within:
 * e^(mu ∓ t·scale·√(1 + 1/n)), t being the 90 % point of Student's t with the freedom of the row.
 *
 * @example
 * nextCarry(rowOf(card, "Copper mid")) // { lowM: 84.1, carryM: 91.4, highM: 99.3 }
 */
export function nextCarry({ mu, scale, freedom, evidence }: CardRow): NextCarry {
  const carryM = Math.exp(mu);
  const reach = tQuantile(UPPER_TENTH, freedom) * scale * Math.sqrt(1 + 1 / evidence);
  return { lowM: carryM * Math.exp(-reach), carryM, highM: carryM * Math.exp(reach) };
}
