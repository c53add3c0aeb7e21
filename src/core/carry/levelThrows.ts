/** Finding one disc on a card. */
import { type DomainError, unavailable } from "../errors";
import { fieldConditionsOf, isStandard } from "../flight/air";
import { type DistanceCurve, playsLikeCurve } from "../flight/curve";
import { discKey } from "../log/names";
import { nearestName } from "../log/nearestName";
import { messages } from "../messages";
import type { Card, CardRow, DiscType, LeftOut, Settings, Throw } from "../types";

// Bringing the carry of a throw to level, calm, smooth terms, so that throws can be compared.

/** What of a throw its level carry follows from. */
export type Flown = Pick<Throw, "carryM" | "riseM" | "headwindMps" | "power">;

/** The smooth carry, m, that a throw with a disc of that type tells of. */
export type Levelling = (thrown: Flown, type: DiscType | null) => number;

/**
 * The smooth carry, m, that a throw tells of: the plays-like distance of its carry under its own rise
 * and headwind, in the air of the field, divided by its power. A level, calm throw in standard air
 * costs nothing. A disc of unknown type is told by the carry of the throw, so that one throw more never
 * moves the others. Throws an `unavailable` error where the flight has no answer.
 */
export function levelling(settings: Settings): Levelling {
  const conditions = fieldConditionsOf(settings);
  const standardAir = isStandard(conditions.densityKgM3);
  const curves = new Map<string, DistanceCurve>();
  return ({ carryM, riseM, headwindMps, power }, type) => {
    if (standardAir && riseM === 0 && headwindMps === 0) return carryM / power;
    const key = `${type} ${riseM} ${headwindMps}`;
    let curve = curves.get(key);
    if (!curve) curves.set(key, (curve = playsLikeCurve(riseM, headwindMps, conditions, type)));
    const levelM = curve(carryM);
    if (!(levelM > 0)) throw unavailable(messages.flight.nothingLeft());
    return levelM / power;
  };
}

/**
 * The row of a disc, by its name without regard to case and spaces. Throws an `unavailable` error
 * where no throw of it counts, with the reason where rows of it were left out, else with the nearest name.
 */
export function rowOf(card: Card, disc: string): CardRow {
  const key = discKey(disc);
  const row = card.rows.find((candidate) => discKey(candidate.disc) === key);
  if (!row) throw noSuchDisc(disc, card.leftOut, card.rows);
  return row;
}

/** Why there is nothing of a disc: its first own row that was left out, another player's, or a slip in its name. */
export function noSuchDisc(
  disc: string,
  leftOut: readonly LeftOut[],
  known: readonly { readonly disc: string }[],
): DomainError {
  const key = discKey(disc);
  const name = disc.trim();
  const rows = leftOut.filter((row) => discKey(row.disc) === key);
  const why = rows.find(({ otherPlayer }) => otherPlayer === undefined) ?? rows[0];
  if (why) return unavailable(messages.carry.noSuchDiscBecause(name, why.reason));
  const nearest = nearestName(
    disc,
    known.map((one) => one.disc),
  );
  return unavailable(
    nearest === null
      ? messages.carry.noSuchDisc(name)
      : messages.carry.noSuchDiscBut(name, nearest),
  );
}
