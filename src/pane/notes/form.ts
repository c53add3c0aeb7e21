import type { Notes } from "../../core/notes/types";

/** What stands in Notes. */
export interface NotesForm {
  readonly text: string;
  /** Day of the throws that the notes give none for, yyyy-mm-dd; "" for no day. null: today. */
  readonly day: string | null;
  /** Names that are to be read as a disc of the bag, by the name as written. */
  readonly renamed: Readonly<Record<string, string>>;
  /** Rows, by their place, for which the usual choice (all but doubles) is turned round. */
  readonly turned: readonly number[];
}

export const EMPTY_NOTES: NotesForm = { text: "", day: null, renamed: {}, turned: [] };

export type Unread = Notes["unread"][number];
