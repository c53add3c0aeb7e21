/** What reading phone notes gives. */
import type { Throw } from "../types";

/** One throw out of the notes, with the fields of the throw log. */
export interface NoteRow extends Omit<Throw, "row"> {
  /** Line of the notes it came from, the first being 1. */
  readonly fromLine: number;
  /** A disc of the bag that the name may mean, where it is not in the bag as written. */
  readonly suggestion: string | null;
  /** How something was read that could be meant otherwise; null where all is plain. */
  readonly readAs: string | null;
  /** Why the throw should be looked at before it is taken; null where nothing speaks against it. */
  readonly doubt: string | null;
}

/** A piece that was not understood, never dropped. */
export interface UnreadNote {
  readonly fromLine: number;
  readonly text: string;
  readonly reason: string;
}

export interface Notes {
  readonly rows: readonly NoteRow[];
  readonly unread: readonly UnreadNote[];
}
