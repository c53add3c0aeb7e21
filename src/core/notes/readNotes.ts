/** Phone notes: free text in, rows for the throw log out. */
import { DISTANCE_WORDS } from "../log/headings";
import { discKey } from "../log/names";
import { messages } from "../messages";
import type { BagDisc, Settings } from "../types";
import type { DistanceUnit } from "../units";
import { bindMarks, bindSides, namesFirst, setMissesAside } from "./bind";
import { type DraftDisc, draftLine, type DraftLine } from "./drafts";
import { noteDate, type NoteDate, yearNear } from "./noteDate";
import { noteRows, readNoteTable, suggestDisc, tableSeparator } from "./noteRows";
import type { NoteRow, Notes, UnreadNote } from "./pieces";
import { type BagPattern, bagPatterns, tokenize } from "./tokenize";

// Reads notes line by line, remembering what earlier lines said: date, disc, unit.

/** Bullets, boxes and emoji before the first word; crosses and question marks stay, they are marks. */
const BULLETS =
  /^(?:\s|[-*•·–—>▪◦●○‣](?=\s|\p{L})|\[[ xX✓✔]?\](?=\s)|(?![❌✖✗✘❓👎])\p{Extended_Pictographic}|\u200d|\ufe0f)+/u;
const LIST_NUMBER = /^\d{1,2}[.)]\s+/;

export class NoteReader {
  private readonly rows: NoteRow[] = [];
  private readonly unread: UnreadNote[] = [];
  private readonly patterns: readonly BagPattern[];
  private unit: DistanceUnit;
  private day: number | null = null;
  /** Whether a date that was not read stands over the lines to come. */
  private dayUnread = false;
  private year: number | null = null;
  private disc: string | null = null;
  /** A name on a line of its own that no carry has followed yet. */
  private heading: UnreadNote | null = null;

  constructor(
    private readonly bag: readonly BagDisc[],
    private readonly settings: Settings,
    private readonly today: number | null,
  ) {
    this.patterns = bagPatterns(bag);
    this.unit = settings.distanceUnit;
  }

  read(lines: readonly string[]): Notes {
    for (let index = 0; index < lines.length; index++) {
      const separator = tableSeparator(lines[index]!);
      if (separator === null) this.readLine(lines[index]!, index + 1);
      else index += this.readTable(lines.slice(index), separator, index + 1) - 1;
    }
    this.closeHeading();
    this.unread.sort((one, other) => one.fromLine - other.fromLine);
    return { rows: this.rows, unread: this.unread };
  }

  /** Reads rows up to the next blank line; how many lines that were. */
  private readTable(lines: readonly string[], separator: string, firstLine: number): number {
    const blank = lines.findIndex((line) => line.trim() === "");
    const table = blank < 0 ? lines : lines.slice(0, blank);
    const { rows, unread } = readNoteTable(table, separator, firstLine, this.bag, this.settings);
    this.rows.push(...rows);
    this.unread.push(...unread);
    return table.length;
  }

  private readLine(line: string, fromLine: number): void {
    const text = line.replace(BULLETS, "").trimEnd();
    const date = noteDate(text, (month, day) => this.yearOf(month, day));
    if (date) this.takeDate(date, fromLine);
    const rest = text.slice(date?.text.length ?? 0).replace(LIST_NUMBER, "");
    if (!this.takeUnit(rest) && !this.takeYear(rest)) this.takeThrows(rest, fromLine);
  }

  private takeDate({ text, day, why }: NoteDate, fromLine: number): void {
    this.closeHeading();
    this.day = day;
    this.disc = null;
    this.dayUnread = why !== null;
    const reason = why && DATE_FAULTS[why]();
    if (reason) this.unread.push({ fromLine, text, reason });
  }

  private yearOf(month: number, day: number): number | null {
    if (this.year !== null) return this.year;
    if (this.day !== null) return yearNear(month, day, this.day, false);
    return this.today === null ? null : yearNear(month, day, this.today, true);
  }

  /** "in metres" on a line of its own. */
  private takeUnit(text: string): boolean {
    const word = /^(?:all )?(?:in )?(\S+)$/.exec(discKey(text).replace(/[():.]/g, ""))?.[1];
    const unit = DISTANCE_WORDS.get(word ?? "");
    if (unit) this.unit = unit;
    return unit !== undefined;
  }

  /** "2026" on a line of its own. */
  private takeYear(text: string): boolean {
    const year = /^(20\d{2}):?$/.exec(text.trim())?.[1];
    if (year) this.year = Number(year);
    return year !== undefined;
  }

  private takeThrows(text: string, fromLine: number): void {
    const said = setMissesAside(tokenize(text, this.patterns), this.unit);
    const pieces = namesFirst(bindSides(said), this.disc !== null);
    const line = draftLine(bindMarks(pieces), this.unit);
    for (const { text: piece, reason } of line.unread)
      this.unread.push({ fromLine, text: piece, reason });
    if (line.discs.some(({ throws }) => throws.length > 0)) this.takeDiscs(line, text, fromLine);
    else {
      this.dayUnread ||= line.dated;
      this.takeHeading(line, fromLine);
    }
  }

  private takeDiscs({ discs, words, dated }: DraftLine, whole: string, fromLine: number): void {
    for (const draft of discs) {
      if (draft.name !== null) {
        this.closeHeading();
        this.disc = draft.name;
      }
      if (draft.throws.length === 0)
        this.unread.push({
          fromLine,
          text: [draft.name, ...draft.remarks].join(" "),
          reason: messages.notes.noCarry(),
        });
      else if (this.disc === null)
        this.unread.push({ fromLine, text: whole.trim(), reason: messages.notes.noDisc() });
      else this.addRows(draft, this.disc, fromLine, dated || this.dayUnread);
    }
    for (const text of words)
      this.unread.push({ fromLine, text, reason: messages.notes.unknown() });
  }

  private addRows(draft: DraftDisc, disc: string, fromLine: number, dayUnread: boolean): void {
    const { day, unit, bag } = this;
    const doubt = dayUnread ? messages.notes.dayUnread() : null;
    this.heading = null;
    for (const row of noteRows(draft, { fromLine, disc, day, unit, bag, doubt }))
      this.rows.push(row);
  }

  /** A line without carries: the disc of the lines to come, or chatter. */
  private takeHeading({ discs, words }: DraftLine, fromLine: number): void {
    const named = discs.map(({ name }) => name ?? "");
    const chatter = [...words, ...discs.flatMap(({ remarks }) => remarks)];
    const word = named.length === 0 && chatter.length === 1 ? chatter[0]! : null;
    const disc =
      named.length === 1 ? named[0]! : word !== null && this.mayBeDisc(word) ? word : null;
    if (disc !== null) {
      this.closeHeading();
      this.disc = disc;
      this.heading = { fromLine, text: disc, reason: messages.notes.noCarry() };
    } else
      for (const text of named)
        this.unread.push({ fromLine, text, reason: messages.notes.noCarry() });
    for (const text of chatter) {
      if (text !== disc) this.unread.push({ fromLine, text, reason: messages.notes.unknown() });
    }
  }

  private mayBeDisc(words: string): boolean {
    return this.disc === null || this.bag.length === 0 || suggestDisc(words, this.bag) !== null;
  }

  private closeHeading(): void {
    if (this.heading) this.unread.push(this.heading);
    this.heading = null;
  }
}

const DATE_FAULTS = {
  ambiguous: messages.notes.ambiguousDate,
  "no year": messages.notes.noYear,
  "no such day": messages.notes.noSuchDay,
};

/**
 * Reads throws out of free text, line by line: one or several discs a line, each with its carries
 * ("mint fairway 352, 344 x 290"); a name on a line of its own before lines of carries; names behind
 * carries; dates as headings or at the head of a line; misses ("10 left", "L10"), powers ("90 %"), x, ? or
 * off for a throw that should not count (an x before a carry marks that one, before a comma or at the
 * end of a line the one before it), remarks; units behind numbers, else `settings.distanceUnit`;
 * rows pasted from a sheet under their header. A disc of the bag is spelt as the bag does; any other
 * name stays as written, with a suggestion where one disc of the bag is near. What is not understood
 * comes back unread with its line, its text and a reason, never dropped: emoji and bullets alone are
 * passed over. `today`, a serial day, tells the year of a date without one; without it, and without
 * As of or a full date before, such a date is unread. Blank text gives nothing.
 *
 * @example
 * readNotes("copper mid 271 10 left", bag, DEFAULT_SETTINGS).rows[0]?.disc // "Copper mid"
 */
export function readNotes(
  text: string,
  bag: readonly BagDisc[],
  settings: Settings,
  today: number | null = settings.asOfDay,
): Notes {
  return new NoteReader(bag, settings, today).read(
    text.normalize("NFKC").split(/\r\n?|[\n\u2028\u2029]/),
  );
}
