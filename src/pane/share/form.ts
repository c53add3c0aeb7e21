import type { Settings } from "../../core/types";
import type { CellValue } from "../../workbook/port";

/** What stands in Share. */
export interface ShareForm {
  readonly partner: string;
  /** Where the partner's throws are: a table of this workbook, or "" for the box. */
  readonly table: string;
  readonly text: string;
  /** What that table holds, once it was read. */
  readonly cells: readonly (readonly CellValue[])[];
  /** Units of the partner's figures; null: ours. */
  readonly distanceUnit: Settings["distanceUnit"] | null;
  readonly windUnit: Settings["windUnit"] | null;
}

export const EMPTY_SHARE: ShareForm = {
  partner: "",
  table: "",
  text: "",
  cells: [],
  distanceUnit: null,
  windUnit: null,
};
