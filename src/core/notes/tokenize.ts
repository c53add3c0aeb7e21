/** A line of notes cut into pieces; what belongs together comes later. */
import { DISTANCE_WORDS } from "../log/headings";
import { messages } from "../messages";
import type { BagDisc } from "../types";
import type { DistanceUnit } from "../units";
import { dateWithin } from "./noteDate";
import { numbersIn, type Piece } from "./pieces";

// Finding the discs of the bag in a line of notes.

export interface BagPattern {
  readonly disc: BagDisc;
  /** Sticky: matches at its lastIndex only. */
  readonly pattern: RegExp;
}

/**
 * One pattern a disc, in any case and spacing, longest name first so that "Copper mid 2" goes before
 * "Copper mid". A name without a letter would swallow carries and has none.
 */
export const bagPatterns = (bag: readonly BagDisc[]): BagPattern[] =>
  bag
    .filter(({ disc }) => /\p{L}/u.test(disc))
    .sort((one, other) => other.disc.length - one.disc.length)
    .map((disc) => {
      const words = disc.disc.normalize("NFKC").trim().split(/\s+/).map(literally);
      return { disc, pattern: new RegExp(`${words.join("\\s+")}(?![\\p{L}\\p{N}])`, "iuy") };
    });

const literally = (text: string): string => text.replace(/[\\^$.*+?()[\]{}|/]/g, "\\$&");

// How pieces of notes are written: at any place in a line the first rule that matches makes the piece.

export interface Rule {
  /** Sticky: matches at its lastIndex only. */
  readonly pattern: RegExp;
  /** What a match means; several pieces, or none, are possible. */
  readonly read: (groups: Readonly<Record<string, string | undefined>>, text: string) => Piece[];
}

const NUMBER = "\\d+(?:[.,]\\d+)*";
const UNIT = "(?:feet|foot|ft|met(?:re|er)s?|m|['′’])(?![\\p{L}\\p{N}])";
const BAD = "[x×?✗✘✖❌❓👎]";
const WORD_END = "(?![\\p{L}\\p{N}])";

const rule = (pattern: string, read: Rule["read"]): Rule => ({
  pattern: new RegExp(pattern, "iuy"),
  read,
});

export const RULES: readonly Rule[] = [
  rule("\\s+", () => []),
  rule("\\((?<inside>[^()]*)\\)", ({ inside }) => [{ kind: "remark", text: inside!.trim() }]),
  rule(`(?<digits>${NUMBER})\\s*%`, ({ digits }, text) => [power(digits!, text)]),
  rule(
    `${NUMBER}\\s*(?:mph|km/?h|kph|m/s|mps)${WORD_END}(?:\\s+(?:head|tail|cross)[\\s-]?wind)?`,
    (_, text) => [unclear(text, messages.notes.windNote())],
  ),
  rule(`${NUMBER}\\s*(?:yards?|yds?|paces|steps|km|cm)${WORD_END}`, (_, text) => [
    unclear(text, messages.notes.otherUnit()),
  ]),
  rule("(?<!\\d[-–])\\d+[-–]\\d+(?![-–\\d])", (_, text) => [unclear(text, messages.notes.range())]),
  rule(`(?<side>[lr])(?<digits>\\d+)\\s*(?<unit>${UNIT})?${WORD_END}`, sideways),
  rule(`(?<digits>\\d+)(?<unit>ft|m|['′’])?(?<side>[lr])${WORD_END}`, sideways),
  rule(`(?<side>left|right|l|r)${WORD_END}`, sideways),
  rule(
    `(?<sign>(?<=^|\\s)[+-])?(?<before>${BAD})?(?<digits>${NUMBER})(?:\\s*(?<unit>${UNIT}))?` +
      `(?<after>${BAD})?${WORD_END}`,
    numbers,
  ),
  rule(`${BAD}+${WORD_END}`, (_, text) => [{ kind: "mark", text, belongs: "after" }]),
  rule(`(?:off(?:[\\s-]line)?|bad)${WORD_END}`, (_, text) => [
    { kind: "mark", text, belongs: "before" },
  ]),
  rule(`(?:and|then)${WORD_END}`, (_, text) => [{ kind: "break", text }]),
  rule("[\\p{L}\\p{N}_](?:[\\p{L}\\p{M}\\p{N}_]|['’.&-](?=\\p{L}))*", (_, text) => [
    { kind: "words", text },
  ]),
  rule("[,;/|&]+", (_, text) => [{ kind: "break", text }]),
  rule('[:=@~≈•*·.…!"“”#_–—>→+-]+', () => []),
  rule("[\\p{Extended_Pictographic}\\p{Emoji_Modifier}\\u200d\\ufe0f\\u20e3]+", () => []),
  rule("[^\\s\\p{L}\\p{N}]+", (_, text) => [unclear(text, messages.notes.unknown())]),
];

const unclear = (text: string, reason: string): Piece => ({ kind: "unclear", text, reason });

const unitOf = (text: string | undefined): DistanceUnit | null =>
  DISTANCE_WORDS.get((text ?? "").toLowerCase()) ?? null;

function power(digits: string, text: string): Piece {
  const percent = numbersIn(digits);
  return percent?.length === 1
    ? { kind: "power", text, share: percent[0]! / 100 }
    : unclear(text, messages.notes.twoOrOne());
}

function sideways(
  { side, digits, unit }: Readonly<Record<string, string | undefined>>,
  text: string,
): Piece[] {
  const direction = side!.toLowerCase().startsWith("l") ? -1 : 1;
  const value = digits === undefined ? null : Number(digits);
  return [{ kind: "side", text, direction, value, unit: unitOf(unit) }];
}

function numbers(
  { sign, before, digits, unit, after }: Readonly<Record<string, string | undefined>>,
  text: string,
): Piece[] {
  const values = numbersIn(digits!);
  if (!values) return [unclear(text, messages.notes.twoOrOne())];
  return values.map((value, index) => ({
    kind: "number",
    text: values.length === 1 ? text : `${value}`,
    value,
    unit: unitOf(unit),
    bad:
      (before !== undefined && index === 0) || (after !== undefined && index === values.length - 1),
    readAs: null,
    sign: sign === "-" ? -1 : sign === "+" ? 1 : 0,
  }));
}

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
