/** Which discs are most worth throwing next. */
import { chanceOf } from "../choice/chance";
import { courseForm } from "../choice/courseForm";
import { plainTarget } from "../choice/target";
import { PRACTICE_GAIN, PRACTICE_MOST_THROWS } from "../constants";
import { discKey } from "../log/names";
import type { BagDisc, Card, CardRow, Settings } from "../types";
import { knownToM } from "./needed";

export interface PracticeRow {
  readonly disc: string;
  /** Smooth throws to add. */
  readonly throws: number;
  /** What they add to the chance of the circle at the disc's own carry; null for a disc not thrown yet. */
  readonly gain: number | null;
  /** Half width of the 80 % interval of its carry now; null for a disc not thrown yet. */
  readonly knownToM: number | null;
  readonly why: string;
}

/** Fewer effective throws than this share of the real ones: most of them are old. */
const MOSTLY_OLD = 0.6;

/**
 * What a practice is best spent on. To know a disc better pays in the circle: at its own carry, the
 * chance grows as the doubt of that carry goes out of the spread of the next throw, and by no more than that is the
 * mean chance after further throws of the same spread (a preposterior mean, Raiffa & Schlaifer 1961).
 * Each disc gets throws for as long as one more adds 0.2 % (assumption), and at most ten.
 *
 * @param card What is known of the discs; those that stay at home are left out.
 * @param bag Also tells discs that have no throw yet; these come first. May be empty.
 * @param settings Circle and course spread.
 * @returns One row for each disc that more throws help, most gain first; none where every disc is
 * known well enough.
 * @example
 * practice(card, bag, settings)[0]
 * // { disc: "Olive mid", throws: 5, gain: 0.06, knownToM: 5.1, why: "thrown once only" }
 */
export function practice(card: Card, bag: readonly BagDisc[], settings: Settings): PracticeRow[] {
  const known = card.rows.filter(({ inBag }) => inBag).map((row) => forKnown(row, settings));
  const names = new Set(card.rows.map(({ disc }) => discKey(disc)));
  const unknown = bag
    .filter(({ disc, inBag }) => inBag && !names.has(discKey(disc)))
    .map(({ disc }) => forUnknown(disc, card, settings));
  return [
    ...unknown,
    ...known.filter(({ throws }) => throws > 0).sort((one, other) => other.gain! - one.gain!),
  ];
}

function forKnown(row: CardRow, settings: Settings): PracticeRow {
  const now = chanceWith(row, 0, settings);
  const throws = worthwhile(row, settings);
  return {
    disc: row.disc,
    throws,
    gain: chanceWith(row, throws, settings) - now,
    knownToM: knownToM(row),
    why: reason(row),
  };
}

/** As for a disc of usual spread in the middle of the bag that has just had its first throw. */
function forUnknown(disc: string, { rows, population }: Card, settings: Settings): PracticeRow {
  const like = rows[Math.floor(rows.length / 2)];
  const first: CardRow | null = like ? { ...like, ...population, evidence: 1 } : null;
  const throws = first
    ? Math.min(PRACTICE_MOST_THROWS, 1 + worthwhile(first, settings))
    : PRACTICE_MOST_THROWS;
  return { disc, throws, gain: null, knownToM: null, why: "not thrown yet" };
}

/** How many throws in a row add enough each. */
function worthwhile(row: CardRow, settings: Settings): number {
  let chance = chanceWith(row, 0, settings);
  for (let more = 1; more <= PRACTICE_MOST_THROWS; more++) {
    const next = chanceWith(row, more, settings);
    if (next - chance < PRACTICE_GAIN) return more - 1;
    chance = next;
  }
  return PRACTICE_MOST_THROWS;
}

/** The chance of the circle at the disc's own carry, level and calm, after more throws of its spread. */
function chanceWith(row: CardRow, more: number, settings: Settings): number {
  const later = { ...row, evidence: row.evidence + more, freedom: row.freedom + more };
  const form = courseForm(later, settings);
  return chanceOf(form, plainTarget(Math.exp(form.mu)), settings.circleM)(1);
}

function reason({ throws, evidence, verdict }: CardRow): string {
  if (throws === 1) return "thrown once only";
  if (throws === 2) return "thrown twice only";
  if (verdict === "changing") return "its carry is changing";
  if (evidence < MOSTLY_OLD * throws) return "most of its throws are old";
  return "carry not known well yet";
}
