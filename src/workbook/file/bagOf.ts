import { discKey } from "../../core/log/names";
import type { CellValue } from "../port";

/** Columns of the table Bag beside the disc's name. */
const BLANKS: readonly CellValue[] = ["", "", "", "", ""];

/** Rows for the table Bag with the discs of a log, once each and in its order; all else is blank. */
export function bagOf(throws: readonly (readonly CellValue[])[]): CellValue[][] {
  const names = new Map<string, string>();
  for (const [, disc] of throws) {
    const name = typeof disc === "string" || typeof disc === "number" ? String(disc).trim() : "";
    const key = discKey(name);
    if (name !== "" && !names.has(key)) names.set(key, name);
  }
  return [...names.values()].map((name) => [name, ...BLANKS]);
}
