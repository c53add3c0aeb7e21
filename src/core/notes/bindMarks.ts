/** Which carry an x, a question mark or "off" belongs to. */
import { messages } from "../messages";
import { isMissOf } from "./bind";
import type { NumberPiece, Piece } from "./pieces";

/**
 * Gives every mark on its own to one carry: "x" to the carry right after it, and where a comma, the
 * end of the line or anything else follows, to the one before it; "off" to the one before it. A carry
 * that has a mark already leaves the x to its neighbour, as in "344 x 290 x". Where an x stands
 * between two carries, and nothing but the rule says whose it is, the row tells how it was read. A
 * mark without a carry is unclear.
 */
export function bindMarks(pieces: readonly Piece[]): Piece[] {
  const bound = [...pieces];
  for (let at = bound.length - 1; at >= 0; at--) {
    const mark = bound[at]!;
    if (mark.kind !== "mark") continue;
    const before = carryBefore(bound, at);
    const after = mark.belongs === "after" && isCarry(bound, at + 1) ? at + 1 : -1;
    const own = [after, before].find((index) => isFree(bound[index]));
    if (own !== undefined) {
      const between = own === after && isFree(bound[before]) && bound[at - 1]?.kind !== "mark";
      const readAs = between ? markBetween(bound[before]!, mark, bound[after]!) : null;
      bound[own] = { ...(bound[own] as NumberPiece), bad: true, readAs };
    }
    if (own !== undefined || after >= 0 || before >= 0) bound.splice(at, 1);
    else bound[at] = { kind: "unclear", text: mark.text, reason: messages.notes.loneMark() };
  }
  return bound;
}

const markBetween = (before: Piece, mark: Piece, after: Piece): string =>
  messages.notes.markBetween(before.text, [...mark.text][0]!, after.text);

/** The carry that a mark behind it can mean, past what else is said of that throw; −1 for none. */
function carryBefore(pieces: readonly Piece[], mark: number): number {
  let at = mark - 1;
  while (OF_A_THROW.has(pieces[at]?.kind) || isSignedMiss(pieces, at)) at--;
  return isCarry(pieces, at) ? at : -1;
}

const OF_A_THROW: ReadonlySet<Piece["kind"] | undefined> = new Set([
  "side",
  "power",
  "remark",
  "mark",
]);

const isFree = (piece: Piece | undefined): boolean => piece?.kind === "number" && !piece.bad;

const isCarry = (pieces: readonly Piece[], at: number): boolean =>
  pieces[at]?.kind === "number" && !isSignedMiss(pieces, at);

/** "-10" behind a carry is how far to the side it ended. */
function isSignedMiss(pieces: readonly Piece[], at: number): boolean {
  const piece = pieces[at];
  if (piece?.kind !== "number" || piece.sign === 0) return false;
  const carry = pieces.slice(0, at).reverse().find(isUnsigned);
  return carry !== undefined && isMissOf(piece, carry);
}

const isUnsigned = (piece: Piece): piece is NumberPiece =>
  piece.kind === "number" && piece.sign === 0;
