/**
 * Finding columns by their header, and settings by their label: in any case and order, by listed
 * aliases, with or without a unit behind the name ("Carry (m)", "Carry, m", "Carry m").
 */
import type { Cell } from "../types";
import { plainCell } from "./cell";
import { discKey } from "./discKey";

/** For each field its headers, ours first; all in lower case. */
export type Aliases<Field extends string> = Readonly<Record<Field, readonly string[]>>;

export interface Heading<Field extends string> {
  readonly field: Field;
  /** What stands behind the name, such as "m"; "" for nothing. */
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
  const parts = /^(.*?)(?:\s*[([]\s*(.*?)\s*[)\]]|\s*,\s*(\S+)|\s+(\S+))$/.exec(text);
  const field = parts && fieldNamed(parts[1]!, aliases);
  return field ? { field, unit: parts[2] ?? parts[3] ?? parts[4] ?? "" } : null;
}

/** The first column of each field that the header row has. */
export function findColumns<Field extends string>(
  header: readonly Cell[],
  aliases: Aliases<Field>,
): Partial<Record<Field, Column>> {
  const found: Partial<Record<Field, Column>> = {};
  header.forEach((cell, index) => {
    const heading = headingOf(cell, aliases);
    if (heading) found[heading.field] ??= { index, unit: heading.unit };
  });
  return found;
}

function fieldNamed<Field extends string>(text: string, aliases: Aliases<Field>): Field | null {
  for (const field of Object.keys(aliases) as Field[]) {
    if (aliases[field].includes(text)) return field;
  }
  return null;
}
