/** How well the bag covers the distances, and where it does not; worked out once a reading. */
import { coverage, type CoverageRow, type Gap, gaps } from "../../core/bag/coverage";
import { toMetres } from "../../core/units";
import { attempt, type Answer } from "../attempt";
import type { Book } from "../book/book";
import { oncePer } from "../book/oncePer";

/** Fine enough for a smooth line. */
const STEP = { ft: 5, m: 1.5 } as const;

export interface Covered {
  readonly rows: readonly CoverageRow[];
  readonly gaps: readonly Gap[];
}

export const coveredOf = oncePer(({ card, settings }: Book): Answer<Covered> =>
  attempt(() => ({
    rows: coverage(card, settings, {
      stepM: toMetres(STEP[settings.distanceUnit], settings.distanceUnit),
    }),
    gaps: gaps(card, settings),
  })),
);
