/** A disc with all that it may be thrown at. */
import type { CardRow } from "../types";
import { COARSE, FINE, landing, type Landing } from "./landing";

export interface Throwable {
  readonly row: CardRow;
  readonly powers: readonly number[];
  /** One for each power, softest first. */
  readonly landings: readonly Landing[];
  readonly coarseLandings: readonly Landing[];
}

export const throwable = (row: CardRow, powers: readonly number[]): Throwable => ({
  row,
  powers,
  landings: powers.map((power) => landing(row, power, FINE)),
  coarseLandings: powers.map((power) => landing(row, power, COARSE)),
});
