/** Which number a side belongs to. */
import { LEAST_LIKELY_CARRY_M } from "../constants";
import { messages } from "../messages";
import { type DistanceUnit, toMetres } from "../units";
import { isLine, isRemark, type NumberPiece, type Piece } from "./pieces";

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

// Which carry an x, a question mark or "off" belongs to.

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

// Misses along the line, "10 short": no carry, and not read as one.

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
      kept.push(unclearSide(piece, next));
      index++;
    } else if (
      piece.kind === "words" &&
      ENDS.test(piece.text) &&
      next?.kind === "number" &&
      carry &&
      isMissOf(next, carry)
    ) {
      kept.push(unclearSide(piece, next));
      index++;
    } else {
      kept.push(piece);
      if (piece.kind === "number") carry = piece;
      else if (piece.kind === "disc") carry = null;
    }
  }
  return kept;
}

const unclearSide = (one: Piece, other: Piece): Piece => ({
  kind: "unclear",
  text: `${one.text} ${other.text}`,
  reason: messages.notes.shortOrLong(),
});

/**
 * Brings a line whose names stand behind their numbers ("301 copper mid, 352 mint fairway") to the
 * usual order; any other line stays as it is. A name that the bag does not know counts as one only
 * where no disc is current, since it may be a remark.
 */
export function namesFirst(pieces: readonly Piece[], discIsCurrent: boolean): Piece[] {
  const said = pieces.filter(({ kind }) => !SILENT.has(kind));
  const first = said[0];
  const last = said[said.length - 1];
  const endsInName =
    last?.kind === "disc" || (last?.kind === "words" && !discIsCurrent && isName(last));
  if (first?.kind !== "number" || !endsInName) return [...pieces];
  const ordered: Piece[] = [];
  let held: Piece[] = [];
  for (const piece of pieces) {
    if (piece.kind === "disc" || piece === last) {
      ordered.push(piece, ...held);
      held = [];
    } else held.push(piece);
  }
  return [...ordered, ...held];
}

const SILENT: ReadonlySet<Piece["kind"]> = new Set(["break", "remark", "unclear", "date"]);

const isName = ({ text }: Piece): boolean => !isLine(text) && !isRemark(text);
