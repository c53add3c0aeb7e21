/** From drafted throws to rows of the throw log. */
import { LONGEST_CARRY_M } from "../constants";
import { findColumns } from "../log/headings";
import { discKey, isOff, OFF } from "../log/names";
import { readThrows, THROW_HEADERS } from "../log/readThrows";
import type { BagDisc, Cell, Settings } from "../types";
import { type DistanceUnit, toMetres } from "../units";
import type { DraftDisc } from "./drafts";
import { daysInColumn } from "./noteDate";
import type { NoteRow, Notes, UnreadNote } from "./pieces";

// Which disc of the bag a name may mean.

/** Share of the letters that may differ. */
const MOST_DIFFERENT = 1 / 3;

/**
 * The one disc of the bag whose name has the written words in it, as "mint" for "Mint fairway", or
 * else the one that differs in the fewest letters, up to a third of them. null where none is near or
 * two are equally near. A suggestion only: nothing is renamed by it.
 *
 * @example
 * suggestDisc("coper mid", bag) // "Copper mid"
 */
export function suggestDisc(name: string, bag: readonly BagDisc[]): string | null {
  const key = discKey(name);
  const words = key.split(" ");
  const holding = bag.filter(({ disc }) => {
    const own = discKey(disc).split(" ");
    return words.every((word) => own.some((part) => part.startsWith(word)));
  });
  if (holding.length === 1) return holding[0]!.disc;
  const near = bag
    .map(({ disc }) => ({ disc, away: editDistance(key, discKey(disc)) }))
    .filter(({ disc, away }) => away <= MOST_DIFFERENT * Math.max(key.length, disc.length))
    .sort((one, other) => one.away - other.away);
  return near[0] && near[0].away !== near[1]?.away ? near[0].disc : null;
}

/**
 * Letters to insert, remove, replace or swap with their neighbour to make one word of another
 * (optimal string alignment; Damerau 1964, Commun. ACM 7:171).
 */
export function editDistance(one: string, other: string): number {
  const from = [...one];
  const to = [...other];
  let before: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, index) => index);
  for (let i = 1; i <= from.length; i++) {
    const next = [i];
    for (let j = 1; j <= to.length; j++) {
      const same = from[i - 1] === to[j - 1];
      let least = Math.min(last[j]! + 1, next[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1];
      if (swapped) least = Math.min(least, before[j - 2]! + 1);
      next.push(least);
    }
    [before, last] = [last, next];
  }
  return last[to.length]!;
}

/** What holds for a whole line. */
export interface LineContext {
  readonly fromLine: number;
  readonly disc: string;
  readonly day: number | null;
  /** Where the line names no unit. */
  readonly unit: DistanceUnit;
  readonly bag: readonly BagDisc[];
  readonly doubt: string | null;
}

/**
 * Rows of one disc. A carry without a unit takes that of its miss, else of the next carry that has
 * one, as in "91 92 93 m", else of the one before, unless no throw is as long as that; a miss without
 * one takes that of its carry.
 */
export function noteRows({ throws, line, remarks }: DraftDisc, context: LineContext): NoteRow[] {
  const { fromLine, disc, day, bag, doubt } = context;
  const units = throws.map(({ carry, side }) => carry.unit ?? side?.unit ?? null);
  return throws.map(({ carry, side, power, ...own }, index) => {
    const named = [...units.slice(index), ...units.slice(0, index).reverse()];
    const unit =
      named.find((near) => near && toMetres(carry.value, near) <= LONGEST_CARRY_M) ?? context.unit;
    return {
      fromLine,
      disc,
      suggestion: suggestionFor(disc, bag),
      readAs: carry.readAs,
      doubt,
      carryM: toMetres(carry.value, unit),
      offlineM: side && side.direction * toMetres(side.value, side.unit ?? unit),
      power: power ?? 1,
      line: carry.bad ? OFF : own.line || line,
      headwindMps: 0,
      riseM: 0,
      player: "",
      day,
      note: [...remarks, ...own.remarks].join("; "),
    };
  });
}

/** null for a disc that is in the bag, or where there is no bag. */
export function suggestionFor(disc: string, bag: readonly BagDisc[]): string | null {
  const key = discKey(disc);
  return bag.some((known) => discKey(known.disc) === key) ? null : suggestDisc(disc, bag);
}

// A stretch of a sheet pasted among notes: rows with separators under a header with Disc and Carry.

const SEPARATORS = ["\t", ";", ","] as const;

/** What separates the cells of a header line; null for any other line. */
export function tableSeparator(line: string): string | null {
  for (const separator of SEPARATORS) {
    const columns = findColumns(line.split(separator), THROW_HEADERS);
    if (columns.disc && columns.carry) return separator;
  }
  return null;
}

/**
 * Reads pasted rows as the throw log is read, the first line being the header. Numbers may have a
 * decimal comma where commas do not separate cells. Rows marked off stay, marked; any other row that
 * the log would leave out comes back unread with the log's reason. `firstLine` is the number of the header.
 */
export function readNoteTable(
  lines: readonly string[],
  separator: string,
  firstLine: number,
  bag: readonly BagDisc[],
  settings: Settings,
): Notes {
  const header = lines[0]!.split(separator);
  const columns = findColumns(header, THROW_HEADERS);
  const off = new Set<number>();
  const texts = lines.slice(1).map((line) => line.split(separator));
  const days = daysInColumn(texts.map((row) => row[columns.date?.index ?? -1] ?? ""));
  const cells: Cell[][] = texts.map((row, index) =>
    row.map((text, column): Cell => {
      if (column === columns.date?.index) return days[index] ?? text;
      if (column !== columns.line?.index) return typedNumber(text, separator);
      if (!isOff(discKey(text))) return text;
      off.add(index + 2);
      return "";
    }),
  );
  const log = readThrows([header, ...cells], settings, "everyone");
  const rows = log.throws.map(({ row, ...thrown }): NoteRow => ({
    ...thrown,
    line: off.has(row) ? OFF : thrown.line,
    fromLine: firstLine + row - 1,
    suggestion: suggestionFor(thrown.disc, bag),
    readAs: null,
    doubt: null,
  }));
  const unread = log.leftOut.map(({ row, reason }): UnreadNote => ({
    fromLine: firstLine + row - 1,
    text: lines[row - 1]!.trim(),
    reason: reason.replace(/^Row \d+: /, ""),
  }));
  return { rows, unread };
}

/** The number that a cell's text is, else the text. */
function typedNumber(text: string, separator: string): Cell {
  const point = separator === "," ? "[.]" : "[.,]";
  const match = new RegExp(`^\\s*([-+]?\\d+(?:${point}\\d+)?)\\s*(%?)\\s*$`).exec(text);
  if (!match) return text;
  const number = Number(match[1]!.replace(",", "."));
  return match[2] ? number / 100 : number;
}
