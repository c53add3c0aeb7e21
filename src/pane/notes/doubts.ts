import { LEAST_LIKELY_CARRY_M } from "../../core/constants";
import { discKey, isOff } from "../../core/log/names";
import type { Book } from "../book/book";
import type { NewThrow } from "../book/newThrows";
import { usualCarryIfUnlikely } from "../book/unlikely";
import { distance } from "../words/figures";

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
