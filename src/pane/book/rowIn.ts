import { discKey } from "../../core/log/names";
import type { CardRow } from "../../core/types";
import type { Book } from "./book";

/** The disc's row of the card; null for one without throws that count. */
export const rowIn = ({ card }: Book, disc: string): CardRow | null =>
  card.rows.find((row) => discKey(row.disc) === discKey(disc)) ?? null;
