/** What was understood of the notes, row by row, and what would be added. */
import { discKey } from "../../core/log/discKey";
import { isoDay } from "../../core/log/serialDay";
import { readNotes } from "../../core/notes/readNotes";
import { attempt } from "../attempt";
import type { Book } from "../book/book";
import { doubles } from "../book/doubles";
import type { NewThrow } from "../book/newThrows";
import type { NotesForm, Unread } from "./form";

export interface UnderstoodRow {
  readonly at: number;
  readonly fromLine: number;
  /** With the chosen name, the day filled in, and the player. */
  readonly thrown: NewThrow;
  /** Whether the log has this very throw already. */
  readonly double: boolean;
  readonly taken: boolean;
}

/** A name in the notes that the bag does not have. */
export interface StrangeName {
  readonly written: string;
  readonly suggestion: string | null;
}

export interface Understood {
  readonly rows: readonly UnderstoodRow[];
  readonly unread: readonly Unread[];
  readonly strange: readonly StrangeName[];
}

export function understand(form: NotesForm, book: Book, today: number): Understood {
  const read = attempt(() => readNotes(form.text, book.bag, book.settings, today));
  if (!read.ok)
    return { rows: [], unread: [{ fromLine: 1, text: "", reason: read.why }], strange: [] };
  const usualDay = form.day === null ? today : isoDay(form.day);
  const throws = read.value.rows.map(({ fromLine: _line, suggestion: _near, ...thrown }) => ({
    ...thrown,
    disc: form.renamed[thrown.disc] ?? thrown.disc,
    day: thrown.day ?? usualDay,
    player: thrown.player === "" ? (book.settings.player ?? "") : thrown.player,
  }));
  const known = doubles(throws, book);
  const rows = throws.map((thrown, at) => {
    const double = known[at]!;
    const { fromLine } = read.value.rows[at]!;
    return { at, fromLine, thrown, double, taken: double === form.turned.includes(at) };
  });
  return { rows, unread: read.value.unread, strange: strangeNames(read.value.rows, book) };
}

function strangeNames(
  rows: readonly { readonly disc: string; readonly suggestion: string | null }[],
  { bag, log }: Book,
): StrangeName[] {
  const known = new Set([...bag, ...log.throws].map(({ disc }) => discKey(disc)));
  const strange = new Map<string, StrangeName>();
  for (const { disc, suggestion } of rows)
    if (!known.has(discKey(disc))) strange.set(disc, { written: disc, suggestion });
  return [...strange.values()];
}
