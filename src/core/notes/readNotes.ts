/** Phone notes: free text in, rows for the throw log out. */
import type { BagDisc, Settings } from "../types";
import { NoteReader } from "./NoteReader";
import type { Notes } from "./types";

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
