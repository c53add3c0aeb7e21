/** What was understood of the notes, row by row, and what would be added. */
import { LEAST_LIKELY_CARRY_M } from "../../core/constants";
import { dayFromIso } from "../../core/log/cell";
import { discKey, isOff } from "../../core/log/names";
import type { NoteRow, Notes } from "../../core/notes/pieces";
import { readNotes } from "../../core/notes/readNotes";
import type { Book } from "../book/book";
import { doubles, type NewThrow, usualCarryIfUnlikely } from "../book/newThrows";
import { attempt } from "../controller";
import type { NotesForm } from "../forms";
import { distance } from "../words/figures";

export type Unread = Notes["unread"][number];

/** What speaks against taking a throw unseen, in sentences; "" where nothing does. */
export const doubtsIn = (thrown: NewThrow, book: Book, today: number): string =>
  [dayDoubt(thrown, today), carryDoubt(thrown, book)].filter((doubt) => doubt !== null).join(" ");

const dayDoubt = ({ day }: NewThrow, today: number): string | null =>
  day !== null && day > today ? "This day is still to come." : null;

/** A throw that is marked off may have ended anywhere. */
function carryDoubt({ disc, carryM, power, line }: NewThrow, book: Book): string | null {
  const { distanceUnit } = book.settings;
  if (isOff(discKey(line))) return null;
  if (carryM < LEAST_LIKELY_CARRY_M) return "Very short for a carry.";
  const usualM = usualCarryIfUnlikely(book, disc, carryM / power);
  return usualM === null
    ? null
    : `Far from the ${distance(usualM, distanceUnit)} that ${disc} carries.`;
}

export interface UnderstoodRow {
  readonly at: number;
  readonly fromLine: number;
  /** With the chosen name, the day filled in, and the player. */
  readonly thrown: NewThrow;
  /** Whether the log has this very throw already. */
  readonly double: boolean;
  /** How a mark was read that could be meant otherwise; "" where all is plain. */
  readonly readAs: string;
  /** Why it is not taken unless the player ticks it; "" where nothing speaks against it. */
  readonly doubts: string;
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
  const usualDay = form.day === null ? today : dayFromIso(form.day);
  const throws = read.value.rows.map((row): NewThrow => {
    const thrown = thrownIn(row);
    const disc = form.renamed[thrown.disc] ?? thrown.disc;
    const player = thrown.player === "" ? (book.settings.player ?? "") : thrown.player;
    return { ...thrown, disc, day: thrown.day ?? usualDay, player };
  });
  const known = doubles(throws, book);
  const rows = throws.map((thrown, at) => {
    const double = known[at]!;
    const { fromLine, readAs, doubt } = read.value.rows[at]!;
    const doubts = [doubt ?? "", doubtsIn(thrown, book, today)].join(" ").trim();
    const taken = form.ticked[at] ?? (!double && doubts === "");
    return { at, fromLine, thrown, double, readAs: readAs ?? "", doubts, taken };
  });
  return { rows, unread: read.value.unread, strange: strangeNames(read.value.rows, book) };
}

/** The throw alone, without what the notes say of it. */
const thrownIn = ({
  fromLine: _line,
  suggestion: _near,
  readAs: _how,
  doubt: _why,
  ...thrown
}: NoteRow): NewThrow => thrown;

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
