import type { Book } from "./book";
import { rowIn } from "./rowIn";

/** A carry beyond these shares of the disc's own is more often a slip than a throw. Assumption. */
const LEAST_SHARE = 0.5;
const MOST_SHARE = 1.5;

/**
 * The smooth carry, m, that makes a new carry of this disc look like a slip of the keyboard; null
 * where it does not, and for a disc without throws.
 */
export function usualCarryIfUnlikely(book: Book, disc: string, carryM: number): number | null {
  const row = rowIn(book, disc);
  if (!row) return null;
  const usualM = Math.exp(row.mu);
  const share = carryM / usualM;
  return share < LEAST_SHARE || share > MOST_SHARE ? usualM : null;
}
