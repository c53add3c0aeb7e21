/** Which number a side belongs to. */
import { messages } from "../messages";
import type { NumberPiece, Piece } from "./pieces";

/** A sideways miss is at most this share of the carry it belongs to; a larger number is a carry. */
export const MOST_SIDE_SHARE = 0.5;

/**
 * Gives every side written as a word its distance from a number beside it: "271 10 left", "271 left
 * 10", "left 10 271", "10 left 271". Of two numbers, the one
 * small against its carry is the miss. A side without one is unclear.
 */
export function bindSides(pieces: readonly Piece[]): Piece[] {
  const bound: Piece[] = [];
  for (let index = 0; index < pieces.length; index++) {
    const side = pieces[index]!;
    if (side.kind !== "side" || side.value !== null) {
      bound.push(side);
      continue;
    }
    const before = asNumber(bound[bound.length - 1]);
    const after = asNumber(pieces[index + 1]);
    const carryBefore = before && asNumber(bound.slice(0, -1).reverse().find(isCarryOrName));
    const carryAfter = asNumber(pieces.slice(index + 2).find(isCarryOrName));
    const ofBefore =
      before && (carryBefore ? isMissOf(before, carryBefore) : !!after && isMissOf(before, after));
    const ofAfter = after && (before ?? carryAfter) && isMissOf(after, (before ?? carryAfter)!);
    if (before && ofBefore)
      bound[bound.length - 1] = {
        ...side,
        text: `${before.text} ${side.text}`,
        value: before.value,
        unit: before.unit,
      };
    else if (after && ofAfter) {
      bound.push({
        ...side,
        text: `${side.text} ${after.text}`,
        value: after.value,
        unit: after.unit,
      });
      index++;
    } else bound.push(unclear(side, messages.notes.noAmount()));
  }
  return bound;
}

const asNumber = (piece: Piece | undefined): NumberPiece | null =>
  piece?.kind === "number" ? piece : null;

/** What a search for the carry of a miss stops at. */
const isCarryOrName = ({ kind }: Piece): boolean =>
  kind === "number" || kind === "words" || kind === "disc";

export const isMissOf = (
  miss: { readonly value: number },
  carry: { readonly value: number },
): boolean => miss.value <= MOST_SIDE_SHARE * carry.value;

const unclear = ({ text }: Piece, reason: string): Piece => ({ kind: "unclear", text, reason });
