import type { Notes } from "../../core/notes/pieces";

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

export type Unread = Notes["unread"][number];
