import Papa from "papaparse";
import { isoDay } from "../../core/log/serialDay";
import { PortError, type CellValue } from "../port";
import { sentences } from "../sentences";

/** Text of a file: UTF-8 or UTF-16 by its mark, else the old Western code page. */
function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes.includes(0)) throw new PortError("invalid", sentences.notAWorkbook);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

const NUMBER = /^[+-]?\d+(?:\.\d+)?$/;
const COMMA_NUMBER = /^[+-]?\d+,\d+$/;

/** A field as a cell: a plain number, an ISO date as a day, else text; never a formula. */
function cellOf(field: string, delimiter: string): CellValue {
  const text = field.trim();
  if (NUMBER.test(text)) return Number(text);
  if (delimiter !== "," && COMMA_NUMBER.test(text)) return Number(text.replace(",", "."));
  return isoDay(text) ?? text;
}

/**
 * Cells of a file of separated values. Comma, semicolon and tab are told apart by themselves; a
 * decimal comma is one where the comma does not separate.
 */
export function csvCells(bytes: Uint8Array): CellValue[][] {
  const { data, meta } = Papa.parse<string[]>(textOf(bytes), { skipEmptyLines: true });
  return data.map((row) => row.map((field) => cellOf(field, meta.delimiter)));
}
