/** A line of notes cut into pieces; what belongs together comes later. */
import type { BagPattern } from "./bagPatterns";
import { dateWithin } from "./noteDate";
import type { Piece } from "./pieces";
import { RULES } from "./rules";

/** The pieces of a line in order; words that stand side by side make one piece. */
export function tokenize(line: string, bag: readonly BagPattern[]): Piece[] {
  const pieces: Piece[] = [];
  let at = 0;
  let afterWords = false;
  while (at < line.length) {
    const [end, found] = piecesAt(line, at, bag);
    for (const piece of found) {
      const last = pieces[pieces.length - 1];
      if (piece.kind === "words" && last && afterWords)
        pieces[pieces.length - 1] = { kind: "words", text: `${last.text} ${piece.text}` };
      else pieces.push(piece);
      afterWords = piece.kind === "words";
    }
    at = end;
  }
  return pieces;
}

/** Where the piece at a place ends, and what it is; a disc of the bag goes before a date and every rule. */
function piecesAt(line: string, at: number, bag: readonly BagPattern[]): [number, Piece[]] {
  for (const { disc, pattern } of bag) {
    pattern.lastIndex = at;
    const match = pattern.exec(line);
    if (match) return [pattern.lastIndex, [{ kind: "disc", text: match[0], disc }]];
  }
  const date = dateWithin(line.slice(at));
  if (date !== null) return [at + date.length, [{ kind: "date", text: date }]];
  for (const { pattern, read } of RULES) {
    pattern.lastIndex = at;
    const match = pattern.exec(line);
    if (match) return [pattern.lastIndex, read(match.groups ?? {}, match[0])];
  }
  return [at + 1, []];
}
