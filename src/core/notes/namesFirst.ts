import type { Piece } from "./pieces";
import { isLine, isRemark } from "./words";

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
