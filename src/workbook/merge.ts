import { unusable } from "../core/errors";
import { discKey } from "../core/log/names";
import { readThrows } from "../core/log/readThrows";
import { messages } from "../core/messages";
import type { Cells, LeftOut, Settings, Throw } from "../core/types";
import { fromMetres, fromMps } from "../core/units";
import type { Row } from "./port";

/** A throw log with its header row, and the settings that say what its figures mean. */
export interface LogAndSettings {
  readonly log: Cells;
  readonly settings: Settings;
}

export interface Merge {
  /** Rows to add to the table Throws, in our units. */
  readonly add: readonly Row[];
  /** Throws that are in our log already. */
  readonly already: number;
  /** Rows that could not be taken over, and why. */
  readonly leftOut: readonly LeftOut[];
}

/** A hundredth of a unit: what two units of length may differ by on the way. */
const rounded = (value: number): number => Math.round(value * 100) / 100;
const orBlank = (value: number): number | "" => (value === 0 ? "" : rounded(value));

function rowOf(thrown: Throw, player: string, { distanceUnit, windUnit }: Settings): Row {
  const { day, offlineM, power } = thrown;
  return {
    Date: day ?? "",
    Disc: thrown.disc,
    Carry: rounded(fromMetres(thrown.carryM, distanceUnit)),
    Offline: offlineM === null ? "" : rounded(fromMetres(offlineM, distanceUnit)),
    Power: power === 1 ? "" : power,
    Line: thrown.line,
    Headwind: orBlank(fromMps(thrown.headwindMps, windUnit)),
    Rise: orBlank(fromMetres(thrown.riseM, distanceUnit)),
    Player: player,
    Note: thrown.note,
  };
}

const keyOf = ({ Player, Date, Disc, Carry, Note }: Row): string =>
  JSON.stringify([
    discKey(String(Player)),
    Date,
    discKey(String(Disc)),
    Carry,
    discKey(String(Note)),
  ]);

/**
 * What a partner's log adds to ours. Their own rows (no player, or the player of their settings)
 * come in under the name `partner`; rows of other people stay out and are listed. A throw is the
 * same where player, date, disc, carry and note agree; equal throws are counted, so that a carry
 * thrown twice is kept twice and a second merge adds nothing. Figures are brought to our units, to
 * a hundredth. Throws an `unusable` error where the partner has no name, or has ours.
 *
 * @example
 * mergeThrows(ours, theirs, "Partner").add // [{ Date: 46348, Disc: "Copper mid", Player: "Partner", … }]
 */
export function mergeThrows(ours: LogAndSettings, theirs: LogAndSettings, partner: string): Merge {
  const name = partner.trim();
  if (name === "") throw unusable(messages.workbook.partnerUnnamed());
  if (discKey(name) === discKey(ours.settings.player ?? ""))
    throw unusable(messages.workbook.partnerIsPlayer(name));

  const counts = new Map<string, number>();
  for (const thrown of readThrows(ours.log, ours.settings, "everyone").throws) {
    const key = keyOf(rowOf(thrown, thrown.player, ours.settings));
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }

  const read = readThrows(theirs.log, theirs.settings, "everyone");
  const selves = new Set(["", discKey(theirs.settings.player ?? ""), discKey(name)]);
  const add: Row[] = [];
  const leftOut = [...read.leftOut];
  let already = 0;
  for (const thrown of read.throws) {
    const { row, disc, player } = thrown;
    if (!selves.has(discKey(player))) {
      leftOut.push({ row, disc, reason: messages.log.otherPlayer(row, player) });
      continue;
    }
    const merged = rowOf(thrown, name, ours.settings);
    const left = counts.get(keyOf(merged)) ?? 0;
    if (left > 0) {
      counts.set(keyOf(merged), left - 1);
      already += 1;
    } else add.push(merged);
  }
  return { add, already, leftOut: leftOut.sort((a, b) => a.row - b.row) };
}
