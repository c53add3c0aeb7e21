/** A stretch of a sheet pasted among notes: rows with separators under a header with Disc and Carry. */
import { findColumns } from "../log/headings";
import { discKey } from "../log/discKey";
import { isOff, OFF } from "../log/offLine";
import { readThrows } from "../log/readThrows";
import { THROW_HEADERS } from "../log/throwColumns";
import type { BagDisc, Cell, Settings } from "../types";
import { daysInColumn } from "./dateColumn";
import { suggestionFor } from "./noteRows";
import type { NoteRow, Notes, UnreadNote } from "./types";

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
  const log = readThrows([header, ...cells], { ...settings, player: null });
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
