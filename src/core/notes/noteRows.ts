/** From drafted throws to rows of the throw log. */
import { LONGEST_CARRY_M } from "../constants";
import { OFF } from "../log/offLine";
import type { BagDisc } from "../types";
import { toMetres, type DistanceUnit } from "../units";
import type { DraftDisc } from "./drafts";
import { suggestDisc } from "./suggestDisc";
import type { NoteRow } from "./types";
import { discKey } from "../log/discKey";

/** What holds for a whole line. */
export interface LineContext {
  readonly fromLine: number;
  readonly disc: string;
  readonly day: number | null;
  /** Where the line names no unit. */
  readonly unit: DistanceUnit;
  readonly bag: readonly BagDisc[];
  readonly doubt: string | null;
}

/**
 * Rows of one disc. A carry without a unit takes that of its miss, else of the next carry that has
 * one, as in "91 92 93 m", else of the one before, unless no throw is as long as that; a miss without
 * one takes that of its carry.
 */
export function noteRows({ throws, line, remarks }: DraftDisc, context: LineContext): NoteRow[] {
  const { fromLine, disc, day, bag, doubt } = context;
  const units = throws.map(({ carry, side }) => carry.unit ?? side?.unit ?? null);
  return throws.map(({ carry, side, power, ...own }, index) => {
    const named = [...units.slice(index), ...units.slice(0, index).reverse()];
    const unit =
      named.find((near) => near && toMetres(carry.value, near) <= LONGEST_CARRY_M) ?? context.unit;
    return {
      fromLine,
      disc,
      suggestion: suggestionFor(disc, bag),
      readAs: carry.readAs,
      doubt,
      carryM: toMetres(carry.value, unit),
      offlineM: side && side.direction * toMetres(side.value, side.unit ?? unit),
      power: power ?? 1,
      line: carry.bad ? OFF : own.line || line,
      headwindMps: 0,
      riseM: 0,
      player: "",
      day,
      note: [...remarks, ...own.remarks].join("; "),
    };
  });
}

/** null for a disc that is in the bag, or where there is no bag. */
export function suggestionFor(disc: string, bag: readonly BagDisc[]): string | null {
  const key = discKey(disc);
  return bag.some((known) => discKey(known.disc) === key) ? null : suggestDisc(disc, bag);
}
