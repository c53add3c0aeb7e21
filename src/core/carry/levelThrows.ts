/** Finding one disc on a card. */
import { STANDARD_DENSITY } from "../constants";
import { type DomainError, unavailable } from "../errors";
import type { Conditions } from "../flight/air";
import { playsLikeCurve } from "../flight/curve";
import { discKey } from "../log/names";
import { messages } from "../messages";
import type { Card, CardRow, DiscType, LeftOut, Throw } from "../types";

// Bringing the carry of a throw to level, calm, smooth terms, so that throws can be compared.

/** The standard's own pressure and temperature give its density to this share only. */
const SAME_AIR = 1e-6;

type Curve = (distanceM: number) => number;

/** The smooth carry, m, that a throw with a disc of that type tells of. */
export type Levelling = (thrown: Throw, type: DiscType | null) => number;

/**
 * The smooth carry, m, that a throw tells of: the plays-like distance of its carry under its own rise
 * and headwind, divided by its power. A level, calm throw in standard air costs nothing. Throws an
 * `unavailable` error where the flight has no answer.
 */
export function levelling(conditions: Conditions): Levelling {
  const standardAir = Math.abs(conditions.densityKgM3 / STANDARD_DENSITY - 1) < SAME_AIR;
  const curves = new Map<string, Curve>();
  return (thrown, type) => {
    const { carryM, riseM, headwindMps, power } = thrown;
    if (standardAir && riseM === 0 && headwindMps === 0) return carryM / power;
    const key = `${type ?? ""} ${riseM} ${headwindMps}`;
    let curve = curves.get(key);
    if (!curve) curves.set(key, (curve = playsLikeCurve(riseM, headwindMps, conditions, type)));
    return curve(carryM) / power;
  };
}

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
