/** A list of discs as people keep it, in notes or in a sheet: names, and what else stands beside them. */
import { LEAST_LIKELY_CARRY_M, LONGEST_CARRY_M } from "../constants";
import { type Aliases, DISTANCE_WORDS, headingOf } from "../log/headings";
import { discKey, discType } from "../log/names";
import { messages } from "../messages";
import type { DiscType, Settings } from "../types";
import { type DistanceUnit, toMetres } from "../units";
import type { UnreadNote } from "./pieces";

export interface ListedDisc {
  readonly fromLine: number;
  readonly disc: string;
  readonly type: DiscType | null;
  /** The word of the name from which the type was guessed; null where it was written, or is not known. */
  readonly guessedFrom: string | null;
  readonly line: string;
  /** Grams, as written. */
  readonly weight: number | null;
  readonly carriesM: readonly number[];
  readonly note: string;
}

export interface BagList {
  readonly discs: readonly ListedDisc[];
  readonly unread: readonly UnreadNote[];
}

type Field = "disc" | "type" | "carry" | "line" | "weight" | "note";

const HEADERS: Aliases<Field> = {
  disc: ["disc", "disc name", "discs", "name"],
  type: ["type", "class", "kind"],
  carry: ["carry", "carries", "distance", "smooth", "smooth carry"],
  line: ["line"],
  weight: ["weight"],
  note: ["note", "notes"],
};

/** What was read of one line, before the lines of one disc are put together. */
interface Found {
  disc: string;
  type: DiscType | null;
  line: string;
  weight: number | null;
  carriesM: number[];
  note: string[];
}

const CELL_ENDS = /[\t;,|()[\]]|:(?=\s|$)|\s[-–—=]\s/;
const BULLET = /^[\s\-*•·–—>]+|^\s*\d{1,2}[.)]\s+/;
const CARRY = /^[~≈]?(\d+(?:\.\d+)?)(ft|feet|foot|m|metres?|meters?|['′’])?$/i;
const UNIT = /^(?:ft|feet|foot|m|metres?|meters?|['′’])$/i;
const WEIGHT = /^(\d{2,3}(?:\.\d+)?)\s?(?:g|grams?)$/i;
const RANGE = /^\d+[-–]\d+\D*$/;

/**
 * Reads one disc a line: its name, then in any order its type and what it carries, with or without a
 * header row, in cells or in plain words. A type word on a line of its own holds for the lines below
 * it. Where no type is written, one is guessed from a word of the name, and the word is given. Lines
 * of one name are put together. What cannot be read comes back with the reason.
 *
 * @example
 * readBagList("Copper mid 271 268", settings).discs[0]?.type // "midrange"
 */
export function readBagList(text: string, settings: Settings): BagList {
  const unread: UnreadNote[] = [];
  const discs = new Map<string, ListedDisc>();
  const lines = text.split(/\r\n?|\n/);
  let header: Header | null = null;
  let headline: DiscType | null = null;
  lines.forEach((line, index) => {
    if (line.trim() === "") return;
    const fromLine = index + 1;
    const says = (piece: string, reason: string): void => {
      unread.push({ fromLine, text: piece.trim(), reason });
    };
    const asHeader = discs.size === 0 ? headerOf(line, settings.distanceUnit) : null;
    if (asHeader) {
      header = asHeader;
      return;
    }
    const heading = typeHeading(line);
    if (heading && !header) {
      headline = heading;
      return;
    }
    const found = header
      ? readCells(line, header, says)
      : readWords(line, settings.distanceUnit, says);
    if (!/\p{L}|\p{N}/u.test(found.disc)) return says(line, messages.notes.noDisc());
    put(discs, found, headline, fromLine);
  });
  return { discs: [...discs.values()], unread };
}

type Says = (piece: string, reason: string) => void;

function put(
  discs: Map<string, ListedDisc>,
  found: Found,
  headline: DiscType | null,
  fromLine: number,
): void {
  const key = discKey(found.disc);
  const before = discs.get(key);
  const guess = guessType(found.disc);
  const written = before?.guessedFrom === null ? before.type : null;
  const type = found.type ?? written ?? headline;
  discs.set(key, {
    fromLine: before?.fromLine ?? fromLine,
    disc: before?.disc ?? found.disc,
    type: type ?? guess?.type ?? null,
    guessedFrom: type === null ? (guess?.word ?? null) : null,
    line: found.line || (before?.line ?? ""),
    weight: found.weight ?? before?.weight ?? null,
    carriesM: [...(before?.carriesM ?? []), ...found.carriesM],
    note: [before?.note ?? "", ...found.note].filter((part) => part !== "").join("; "),
  });
}

/** The type that words of a name tell: two words before one, the last before the first. */
function guessType(name: string): { readonly type: DiscType; readonly word: string } | null {
  const words = name.split(" ");
  for (const length of [2, 1])
    for (let from = words.length - length; from >= 0; from--) {
      const word = words.slice(from, from + length).join(" ");
      const type = discType(word);
      if (type) return { type, word };
    }
  return null;
}

/** "Putters", "Mids:" over the discs of that type. */
function typeHeading(line: string): DiscType | null {
  const word = line.replace(BULLET, "").trim().replace(/:$/, "");
  return discType(word) ?? discType(word.replace(/s$/i, ""));
}

// A sheet: a header row, then cells in its columns.

interface Header {
  readonly separator: string;
  readonly fields: readonly (Field | null)[];
  /** Unit of each column of carries; null where it names one that is not read. */
  readonly units: readonly (DistanceUnit | null)[];
}

function headerOf(line: string, usual: DistanceUnit): Header | null {
  const separator = ["\t", ";", ","].find((mark) => line.includes(mark)) ?? "\t";
  const headings = line.split(separator).map((cell) => headingOf(cell, HEADERS));
  if (!headings.some((heading) => heading?.field === "disc" && heading.unit === "")) return null;
  if (headings.length > 1 && headings.filter((heading) => heading !== null).length < 2) return null;
  return {
    separator,
    fields: headings.map((heading) => heading?.field ?? null),
    units: headings.map((heading) =>
      !heading || /^\d*$/.test(heading.unit) ? usual : (DISTANCE_WORDS.get(heading.unit) ?? null),
    ),
  };
}

function readCells(line: string, { separator, fields, units }: Header, says: Says): Found {
  const found = nothingFound();
  line.split(separator).forEach((cell, column) => {
    const word = cell.trim();
    const field = fields[column];
    if (word === "" || !field) return;
    if (field === "disc") found.disc = word.replace(/\s+/g, " ");
    else if (field === "type") found.type = discType(word);
    else if (field === "line") found.line = word;
    else if (field === "note") found.note.push(word);
    else if (field === "weight")
      found.weight = Number(/\d+(?:\.\d+)?/.exec(word)?.[0] ?? NaN) || null;
    else readCarries(word, units[column] ?? null, found, says);
  });
  return found;
}

const nothingFound = (): Found => ({
  disc: "",
  type: null,
  line: "",
  weight: null,
  carriesM: [],
  note: [],
});

function readCarries(text: string, unit: DistanceUnit | null, found: Found, says: Says): void {
  const words = text.split(/\s+/);
  words.forEach((word, at) => {
    if (UNIT.test(word)) return;
    takeNumber(word, unitAfter(words, at) ?? unit, found, says);
  });
}

const unitAfter = (words: readonly string[], at: number): DistanceUnit | null =>
  DISTANCE_WORDS.get((words[at + 1] ?? "").toLowerCase()) ?? null;

function takeNumber(word: string, unit: DistanceUnit | null, found: Found, says: Says): void {
  if (RANGE.test(word)) return says(word, messages.notes.range());
  const match = CARRY.exec(word.replace(",", "."));
  if (!match) return says(word, messages.notes.unknown());
  const named = match[2] ? DISTANCE_WORDS.get(match[2].toLowerCase()) : undefined;
  const own = named ?? unit;
  if (!own) return says(word, messages.notes.otherUnit());
  const carryM = toMetres(Number(match[1]), own);
  if (carryM < LEAST_LIKELY_CARRY_M || carryM > LONGEST_CARRY_M)
    return says(word, messages.notes.notCarry());
  found.carriesM.push(carryM);
}

// Plain words: the name up to the first carry, then the rest in cells or words.

function readWords(line: string, usual: DistanceUnit, says: Says): Found {
  const found = nothingFound();
  const [first = "", ...others] = line.replace(BULLET, "").split(CELL_ENDS);
  const words = first.trim().split(/\s+/);
  const end = words.findIndex((word, at) => at > 0 && startsFigures(word, words[at + 1]));
  found.disc = words.slice(0, end < 0 ? words.length : end).join(" ");
  const rest = end < 0 ? [] : [words.slice(end).join(" ")];
  for (const cell of [...rest, ...others]) readCell(cell.trim(), usual, found, says);
  return found;
}

/** A number of two digits or more is no part of a name; "Copper mid 2" is a second Copper mid. */
const startsFigures = (word: string, next = ""): boolean =>
  RANGE.test(word) ||
  WEIGHT.test(word) ||
  (CARRY.test(word) && (/^[~≈]|\d{2}|\d\D/.test(word) || UNIT.test(next)));

function readCell(cell: string, usual: DistanceUnit, found: Found, says: Says): void {
  if (cell === "") return;
  const type = discType(cell);
  if (type) {
    found.type = type;
    return;
  }
  const weight = WEIGHT.exec(cell);
  if (weight) {
    found.weight = Number(weight[1]);
    return;
  }
  const words = cell.split(/\s+/);
  if (!/\d/.test(cell)) {
    found.note.push(cell);
    return;
  }
  words.forEach((word, at) => {
    const wordType = discType(word);
    const grams = WEIGHT.exec(word);
    if (UNIT.test(word)) return;
    if (wordType) found.type = wordType;
    else if (grams) found.weight = Number(grams[1]);
    else if (/\d/.test(word)) takeNumber(word, unitAfter(words, at) ?? usual, found, says);
    else says(word, messages.notes.unknown());
  });
}
