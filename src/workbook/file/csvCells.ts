import { PortError, type CellValue } from "../port";
import { sentences } from "../sentences";
import { separatedCells } from "../separatedCells";

/** The least byte that text has; UTF-8 keeps all below 128 for themselves. */
const TAB = 9;

/** Text of a file: UTF-8 or UTF-16 by its mark, else the old Western code page. */
function textOf(bytes: Uint8Array): string {
  if (bytes[0] === 0xff && bytes[1] === 0xfe) return new TextDecoder("utf-16le").decode(bytes);
  if (bytes.some((byte) => byte < TAB)) throw new PortError("invalid", sentences.notAWorkbook);
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return new TextDecoder("windows-1252").decode(bytes);
  }
}

/** Cells of a file of separated values. */
export const csvCells = (bytes: Uint8Array): CellValue[][] => separatedCells(textOf(bytes));
