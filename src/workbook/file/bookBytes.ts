/** Workbooks from the bytes of an .xlsx file, and back to bytes. */
import type { Workbook } from "@cj-tech-master/excelts";
import { PortError } from "../port";
import { sentences } from "../sentences";
import { newBook } from "./newBook";
import { unpack } from "./unpack";

/** Reads a file. Throws a PortError with a sentence where it cannot or must not be read. */
export async function readBook(bytes: Uint8Array): Promise<Workbook> {
  const parts = await unpack(bytes);
  const book = newBook();
  try {
    await book.xlsx.loadFromFiles(parts);
  } catch {
    throw new PortError("invalid", sentences.fileBroken);
  }
  return book;
}

/** Writes a file. The same workbook gives the same bytes: the clock stays out of them. */
export async function writeBook(book: Workbook): Promise<Uint8Array> {
  book.created = FIXED_TIME;
  book.modified = FIXED_TIME;
  return book.xlsx.writeBuffer({ validate: false, zip: { level: 6, modTime: FIXED_TIME } });
}

/** The earliest time that a zip file can hold. */
const FIXED_TIME = new Date(Date.UTC(1980, 0, 1));
