/** What stands in the boxes of places whose models are loaded only when they are shown. */
import type { DiscType, Settings } from "../core/types";
import type { CellValue } from "../workbook/port";

/** What stands in Notes. */
export interface NotesForm {
  readonly text: string;
  /** Day of the throws that the notes give none for, yyyy-mm-dd; "" for no day. null: today. */
  readonly day: string | null;
  /** Names that are to be read as a disc of the bag, by the name as written. */
  readonly renamed: Readonly<Record<string, string>>;
  /** Rows that were ticked or unticked by hand, by their place. */
  readonly ticked: Readonly<Record<number, boolean>>;
}

export const EMPTY_NOTES: NotesForm = { text: "", day: null, renamed: {}, ticked: {} };

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

/** What stands in the box for the player's own bag. */
export interface OwnBagForm {
  readonly text: string;
  /** Types set by hand, by the disc's key. */
  readonly types: Readonly<Record<string, DiscType | "">>;
  /** Whether the offer to start was put aside. */
  readonly lookingAround: boolean;
  /** Whether a list was added in this visit. */
  readonly added: boolean;
}

export const EMPTY_OWN_BAG: OwnBagForm = {
  text: "",
  types: {},
  lookingAround: false,
  added: false,
};
