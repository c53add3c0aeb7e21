/** Misses along the line, "10 short": no carry, and not read as one. */
import { LEAST_LIKELY_CARRY_M } from "../constants";
import { messages } from "../messages";
import { toMetres, type DistanceUnit } from "../units";
import { isMissOf } from "./bind";
import type { NumberPiece, Piece } from "./pieces";

const BEGINS = /^(?:too\s+)?(?:short|long)(?!\p{L})/iu;
const ENDS = /(?<!\p{L})(?:short|long)(?:\s+by)?$/iu;

/**
 * Makes "10 short", "10 ft long" and "short by 10" unclear where the number is small against the
 * carry before it, or too small for any carry; "287 short" stays a carry with a remark.
 */
export function setMissesAside(pieces: readonly Piece[], unit: DistanceUnit): Piece[] {
  const kept: Piece[] = [];
  let carry: NumberPiece | null = null;
  for (let index = 0; index < pieces.length; index++) {
    const piece = pieces[index]!;
    const next = pieces[index + 1];
    if (
      piece.kind === "number" &&
      next?.kind === "words" &&
      BEGINS.test(next.text) &&
      (toMetres(piece.value, piece.unit ?? unit) < LEAST_LIKELY_CARRY_M ||
        (carry && isMissOf(piece, carry)))
    ) {
      kept.push(unclear(piece, next));
      index++;
    } else if (
      piece.kind === "words" &&
      ENDS.test(piece.text) &&
      next?.kind === "number" &&
      carry &&
      isMissOf(next, carry)
    ) {
      kept.push(unclear(piece, next));
      index++;
    } else {
      kept.push(piece);
      if (piece.kind === "number") carry = piece;
      else if (piece.kind === "disc") carry = null;
    }
  }
  return kept;
}

const unclear = (one: Piece, other: Piece): Piece => ({
  kind: "unclear",
  text: `${one.text} ${other.text}`,
  reason: messages.notes.shortOrLong(),
});
