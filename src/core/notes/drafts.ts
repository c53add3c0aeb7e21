/** What one line of notes says, before names are looked up and units settled. */
import type { DistanceUnit } from "../units";
import type { NumberPiece } from "./pieces";

export interface DraftSide {
  readonly value: number;
  /** null where none was written. */
  readonly unit: DistanceUnit | null;
  /** Right positive. */
  readonly direction: -1 | 1;
}

export interface DraftThrow {
  readonly carry: NumberPiece;
  side: DraftSide | null;
  power: number | null;
  line: string;
  readonly remarks: string[];
}

/** Throws of one disc; `name` null where the line does not say which. Line and remarks are about all of them. */
export interface DraftDisc {
  readonly name: string | null;
  line: string;
  readonly remarks: string[];
  readonly throws: DraftThrow[];
}

export interface Unread {
  readonly text: string;
  readonly reason: string;
}

export interface DraftLine {
  readonly discs: readonly DraftDisc[];
  /** Words that belong to no throw: a heading, or chatter. */
  readonly words: readonly string[];
  readonly unread: readonly Unread[];
  /** Whether the line has a date that was not read. */
  readonly dated: boolean;
}
