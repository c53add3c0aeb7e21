import { PortError, type CellValue } from "../port";
import { sentences } from "../sentences";
import { separatedCells } from "../separatedCells";

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

/** Cells of a file of separated values. */
export const csvCells = (bytes: Uint8Array): CellValue[][] => separatedCells(textOf(bytes));
