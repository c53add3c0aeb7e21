/** The pieces that a line of notes falls into. */
import type { BagDisc } from "../types";
import type { DistanceUnit } from "../units";

export interface NumberPiece {
  readonly kind: "number";
  readonly text: string;
  readonly value: number;
  /** null where none was written. */
  readonly unit: DistanceUnit | null;
  /** Marked as a throw that should not count. */
  readonly bad: boolean;
  /** How a mark was read that could be meant for another number; null where it is plain. */
  readonly readAs: string | null;
  /** Written with a sign of its own ("-10"): perhaps a sideways miss. 0 for none. */
  readonly sign: -1 | 0 | 1;
}

/** A sideways miss; the distance is null where only the side was written. */
export interface SidePiece {
  readonly kind: "side";
  readonly text: string;
  /** Right positive. */
  readonly direction: -1 | 1;
  readonly value: number | null;
  readonly unit: DistanceUnit | null;
}

/** "x" or "?" on its own belongs to a number right after it, "off" to the one before. */
export interface MarkPiece {
  readonly kind: "mark";
  readonly text: string;
  readonly belongs: "after" | "before";
}

export type Piece =
  | NumberPiece
  | SidePiece
  | MarkPiece
  /** A disc of the bag, whatever its case. */
  | { readonly kind: "disc"; readonly text: string; readonly disc: BagDisc }
  | { readonly kind: "words"; readonly text: string }
  | { readonly kind: "power"; readonly text: string; readonly share: number }
  /** What stands in brackets. */
  | { readonly kind: "remark"; readonly text: string }
  | { readonly kind: "break"; readonly text: string }
  /** A date that does not head its line. */
  | { readonly kind: "date"; readonly text: string }
  | { readonly kind: "unclear"; readonly text: string; readonly reason: string };
