import Papa from "papaparse";
import { dayFromIso } from "../core/log/cell";
import type { CellValue } from "./port";

const NUMBER = /^[+-]?\d+(?:\.\d+)?$/;
const COMMA_NUMBER = /^[+-]?\d+,\d+$/;

/** A field as a cell: a plain number, an ISO date as a day, else text; never a formula. */
function cellOf(field: string, delimiter: string): CellValue {
  const text = field.trim();
  if (NUMBER.test(text)) return Number(text);
  if (delimiter !== "," && COMMA_NUMBER.test(text)) return Number(text.replace(",", "."));
  return dayFromIso(text) ?? text;
}

/**
 * Cells of separated values, from a file or pasted. Comma, semicolon and tab are told apart by
 * themselves; a decimal comma is one where the comma does not separate.
 */
export function separatedCells(text: string): CellValue[][] {
  const { data, meta } = Papa.parse<string[]>(text, { skipEmptyLines: true });
  return data.map((row) => row.map((field) => cellOf(field, meta.delimiter)));
}
