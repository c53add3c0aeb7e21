/**
 * Finding columns by their header, and settings by their label: in any case and order, by listed
 * aliases, with or without something in brackets behind the name ("Carry (m)"). Any other second word
 * makes it another column: "Wind direction" is not Wind.
 */
import type { Cell } from "../types";
import { type DistanceUnit, type TemperatureUnit, toMetres, toMps, type WindUnit } from "../units";
import { plainCell } from "./cell";
import { discKey } from "./names";

/** For each field its headers, ours first; all in lower case. */
export type Aliases<Field extends string> = Readonly<Record<Field, readonly string[]>>;

export interface Heading<Field extends string> {
  readonly field: Field;
  /** What stands in brackets behind the name, such as "m"; "" for nothing. */
  readonly unit: string;
}

/** Where a column is, and the unit its header names. */
export interface Column {
  readonly index: number;
  readonly unit: string;
}

/** The field that a header means; null for a header that means none. */
export function headingOf<Field extends string>(
  cell: Cell,
  aliases: Aliases<Field>,
): Heading<Field> | null {
  const plain = plainCell(cell);
  if (typeof plain !== "string") return null;
  const text = discKey(plain).replace(/\s*:$/, "");
  const whole = fieldNamed(text, aliases);
  if (whole) return { field: whole, unit: "" };
  const parts = /^(.*?)\s*[([]\s*(.*?)\s*[)\]]$/.exec(text);
  const field = parts && fieldNamed(parts[1]!, aliases);
  return field ? { field, unit: parts[2]! } : null;
}

/**
 * The first column of each field that the header row has. A unit that nobody here can read ("Carry (yd)")
 * makes it another column, which is passed over: read in another unit, it would mislead.
 */
export function findColumns<Field extends string>(
  header: readonly Cell[],
  aliases: Aliases<Field>,
): Partial<Record<Field, Column>> {
  const found: Partial<Record<Field, Column>> = {};
  header.forEach((cell, index) => {
    const heading = headingOf(cell, aliases);
    if (heading && isUnitOf(heading.field, heading.unit))
      found[heading.field] ??= { index, unit: heading.unit };
  });
  return found;
}

function fieldNamed<Field extends string>(text: string, aliases: Aliases<Field>): Field | null {
  for (const field of Object.keys(aliases) as Field[]) {
    if (aliases[field].includes(text)) return field;
  }
  return null;
}

// The words by which people name units, for settings, column headers and notes.

export const DISTANCE_WORDS: ReadonlyMap<string, DistanceUnit> = new Map([
  ["ft", "ft"],
  ["feet", "ft"],
  ["foot", "ft"],
  ["'", "ft"],
  ["′", "ft"],
  ["’", "ft"],
  ["m", "m"],
  ["metres", "m"],
  ["metre", "m"],
  ["meters", "m"],
  ["meter", "m"],
]);

export const WIND_WORDS: ReadonlyMap<string, WindUnit> = new Map([
  ["mph", "mph"],
  ["km/h", "km/h"],
  ["kmh", "km/h"],
  ["kph", "km/h"],
  ["m/s", "m/s"],
  ["mps", "m/s"],
]);

export const TEMPERATURE_WORDS: ReadonlyMap<string, TemperatureUnit> = new Map([
  ["f", "F"],
  ["°f", "F"],
  ["fahrenheit", "F"],
  ["c", "C"],
  ["°c", "C"],
  ["celsius", "C"],
]);

/** Shares and directions say so in their header without changing how they are read. */
const PLAIN_UNITS: ReadonlySet<string> = new Set(["", "%", "share", "°", "deg", "degrees"]);

const isUnitOf = (field: string, unit: string): boolean =>
  PLAIN_UNITS.has(unit) || (field === "headwind" ? WIND_WORDS : DISTANCE_WORDS).has(unit);

// What one unit of a column is worth in SI: by the unit in its header, else by the settings.

export const metresPer = (column: Column | undefined, unit: DistanceUnit): number =>
  toMetres(1, DISTANCE_WORDS.get(column?.unit ?? "") ?? unit);

export const mpsPer = (column: Column | undefined, unit: WindUnit): number =>
  toMps(1, WIND_WORDS.get(column?.unit ?? "") ?? unit);
