import type { Place } from "../places";
import type { CellValue, Row, RowAt } from "../../workbook/port";

/** What was changed, with all that it takes to take it back. */
export type Change =
  | { readonly kind: "added"; readonly table: string; readonly rows: readonly RowAt[] }
  | {
      readonly kind: "changed";
      readonly table: string;
      /** `was` is what the row holds since; `before` what it held earlier. */
      readonly rows: readonly (RowAt & { readonly before: Row })[];
    }
  | {
      /** Cells of a range, by row and column from 0. */
      readonly kind: "wrote";
      readonly ref: string;
      readonly cells: readonly {
        readonly row: number;
        readonly column: number;
        readonly before: CellValue;
        readonly now: CellValue;
      }[];
    }
  | {
      /** Whole sheets, by whoever surrounds the pane, who alone can bring the old ones back. */
      readonly kind: "replaced";
      readonly bringBack: () => Promise<void>;
    };

/** One thing that the player did in the pane. */
export interface Step {
  readonly place: Place;
  /** What was done, as "Copper mid 301". */
  readonly what: string;
  /** In the order they were made. */
  readonly changes: readonly Change[];
}

/** The latest step of a place; null where there is none. */
export const lastOf = (steps: readonly Step[], place: Place): Step | null =>
  [...steps].reverse().find((step) => step.place === place) ?? null;
