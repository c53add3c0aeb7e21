/** The pieces that a line of notes falls into. */
import { discKey } from "../log/names";
import type { BagDisc, Throw } from "../types";
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

// Words in notes that are not the name of a disc.

/** Lines of flight, as the log's column Line takes them. */
const LINES: ReadonlySet<string> = new Set(["straight", "flat", "hyzer", "anhyzer"]);

/** Words about a throw. Between two carries they are a remark and not the next disc. */
const REMARKS: ReadonlySet<string> = new Set(
  (
    "a again all best better clean down downhill early easy first full good great head headwind high hit " +
    "in into last late long low nice no of on one only out over rolled roller second short skip " +
    "skipped smooth tail tailwind the third throw throws tree try up uphill very wind windy with wobbly"
  ).split(" "),
);

export const isLine = (words: string): boolean => LINES.has(discKey(words));

export const isRemark = (words: string): boolean =>
  discKey(words)
    .split(" ")
    .every((word) => REMARKS.has(word));

// What digits with commas and points in them mean, where that is certain.

/**
 * The numbers that a run of digits, commas and points stands for: one ("91", "91.5", "91,5"), or a
 * list typed without spaces ("352,344", "91,95,88"). null where it could be read in two ways, such
 * as "91,95" (a fraction, or two throws).
 *
 * @example
 * numbersIn("91,5") // [91.5]
 */
export function numbersIn(digits: string): number[] | null {
  if (/^\d+$/.test(digits) || /^\d+\.\d{1,2}$/.test(digits)) return [Number(digits)];
  if (/^\d+,\d$/.test(digits)) return [Number(digits.replace(",", "."))];
  const groups = digits.split(",");
  const sure = groups.length > 2 ? /^\d{2,3}$/ : /^\d{3}$/;
  return groups.every((group) => sure.test(group)) ? groups.map(Number) : null;
}

// What reading phone notes gives.

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
