/** Finding one disc on a card. */
import { unavailable, type DomainError } from "../errors";
import { discKey } from "../log/discKey";
import { messages } from "../messages";
import type { Card, CardRow, LeftOut } from "../types";

/**
 * The row of a disc, by its name without regard to case and spaces. Throws an `unavailable` error
 * where no throw of it counts, with the reason where rows of it were left out.
 */
export function rowOf(card: Card, disc: string): CardRow {
  const key = discKey(disc);
  const row = card.rows.find((candidate) => discKey(candidate.disc) === key);
  if (!row) throw noSuchDisc(disc, card.leftOut);
  return row;
}

export function noSuchDisc(disc: string, leftOut: readonly LeftOut[]): DomainError {
  const key = discKey(disc);
  const name = disc.trim();
  const why = leftOut.find((row) => discKey(row.disc) === key);
  return unavailable(
    why ? messages.carry.noSuchDiscBecause(name, why.reason) : messages.carry.noSuchDisc(name),
  );
}
