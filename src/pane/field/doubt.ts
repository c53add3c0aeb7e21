import type { Book } from "../book/book";
import { usualCarryIfUnlikely } from "../book/unlikely";
import { distance } from "../words/figures";
import { entryOf } from "./entry";
import type { Session } from "./session";

/** What a question is about: asked once, it is not asked again. */
export const doubted = (session: Session, disc: string): string => `${disc} ${session.carry}`;

/** Asks whether a carry far from the disc's own is meant; null where it is not far, or was asked. */
export function doubtOf(session: Session, book: Book, disc: string): string | null {
  if (session.doubted === doubted(session, disc)) return null;
  const { distanceUnit } = book.settings;
  const carryM = carryIn(session, book, disc);
  const usualM = carryM === null ? null : usualCarryIfUnlikely(book, disc, carryM);
  if (carryM === null || usualM === null) return null;
  return (
    `${distance(carryM, distanceUnit)} is far from the ${distance(usualM, distanceUnit)} of ${disc}. ` +
    "If it is right, add it again; if another disc flew, choose it below."
  );
}

/** What the box cannot be read as is complained about elsewhere. */
function carryIn(session: Session, { settings }: Book, disc: string): number | null {
  try {
    return entryOf(session, disc, settings).carryM;
  } catch {
    return null;
  }
}
