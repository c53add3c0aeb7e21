/** A session through the bag, as plain state. What was thrown stands in the log, not here. */
import { discKey } from "../../core/log/names";
import type { Throw } from "../../core/types";
import type { Book } from "../book/book";

export type Order = "worth" | "listed";

export interface Session {
  readonly day: number;
  /** Felt by every throw of the session. */
  readonly headwindMps: number;
  readonly riseM: number;
  readonly order: Order;
  /** How closely each disc is to be known. */
  readonly marginM: number;
  /** The disc that the player chose instead of the next in order; null for the next. */
  readonly chosen: string | null;
  /** Discs passed over in this round through the bag. */
  readonly skipped: readonly string[];
  /** What stands in the box. */
  readonly carry: string;
  /** Disc and carry that looked like a slip: adding the same again means that they were none. */
  readonly doubted: string | null;
  /** Sideways miss in steps of the arrow keys, right positive; null where it was not noted. */
  readonly offline: number | null;
}

/** The throws of the session: those of its day, by this player, in the order of the log. */
export const throwsOf = (session: Session, { log }: Book): readonly Throw[] =>
  log.throws.filter(({ day }) => day === session.day);

/** Discs to throw: those of the bag, or where no bag is listed those that the log knows. */
export const bagOf = ({ bag, card }: Book): readonly string[] =>
  bag.length > 0
    ? bag.filter(({ inBag }) => inBag).map(({ disc }) => disc)
    : card.rows.map(({ disc }) => disc);

export interface Progress {
  /** Discs with a throw in this round through the bag, and discs in the bag. */
  readonly thrown: number;
  readonly discs: number;
  /** Which time through the bag, from 1. */
  readonly round: number;
  /** The disc to throw now; null where there is none. */
  readonly disc: string | null;
  /** Those that follow it in order. */
  readonly after: readonly string[];
}

/**
 * Where the session stands. Every disc of the bag is thrown once before any is thrown again; those
 * still to come stand in the order of `rank` (least first), ties as listed.
 */
export function progressOf(session: Session, book: Book, rank: (disc: string) => number): Progress {
  const discs = bagOf(book);
  const times = countByDisc(throwsOf(session, book));
  const timesOf = (disc: string): number => times.get(discKey(disc)) ?? 0;
  const round = discs.length === 0 ? 0 : Math.min(...discs.map(timesOf));
  const inRound = discs.filter((disc) => timesOf(disc) === round);
  const skipped = new Set(session.skipped.map(discKey));
  const left = inRound.filter((disc) => !skipped.has(discKey(disc)));
  const queue = [...(left.length > 0 ? left : inRound)];
  if (session.order === "worth") queue.sort((a, b) => rank(a) - rank(b));
  const disc = session.chosen ?? queue[0] ?? null;
  return {
    thrown: discs.length - inRound.length,
    discs: discs.length,
    round: round + 1,
    disc,
    after: queue.filter((other) => other !== disc),
  };
}

function countByDisc(throws: readonly Throw[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { disc } of throws) {
    const key = discKey(disc);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}
