/** Workbooks from the bytes of an .xlsx file, and back to bytes. */
import { Workbook } from "@cj-tech-master/excelts";
import { unzip } from "@cj-tech-master/excelts/archive";
import { installChartSupport } from "@cj-tech-master/excelts/chart";
import { readArea } from "../a1";
import { PortError } from "../port";
import { sentences } from "../sentences";

/** A workbook without sheets that can hold charts. */
export function newBook(): Workbook {
  installChartSupport();
  const book = new Workbook();
  book.creator = book.lastModifiedBy = book.title = "Carrybook";
  return Object.assign(book, NO_WORDS);
}

/** Left out of the file instead of written as empty, as they come back from reading it. */
const NO_WORDS = {
  subject: undefined,
  description: undefined,
  keywords: undefined,
  category: undefined,
};

const MEGABYTE = 1_000_000;
/** A log of 20,000 throws takes under 1 MB, and 20 MB unpacked. */
export const LARGEST_FILE = 25 * MEGABYTE;
const LARGEST_UNPACKED = 250 * MEGABYTE;
const MOST_PARTS = 2_000;
/** Cells that one table, name or merged block may cover before reading it takes minutes. */
const WIDEST_AREA = 300_000;

/** First bytes of the container that holds encrypted workbooks and old .xls files (MS-CFB 2.2). */
const COMPOUND_FILE = [0xd0, 0xcf, 0x11, 0xe0];
const ZIP = [0x50, 0x4b];

const begins = (bytes: Uint8Array, signature: readonly number[]): boolean =>
  signature.every((byte, index) => bytes[index] === byte);
const refuse = (sentence: string): never => {
  throw new PortError("invalid", sentence);
};

/** What a part of a workbook must not be, by its path. */
const REFUSED: readonly (readonly [path: RegExp, sentence: string])[] = [
  [/^xl\/externalLinks\//i, sentences.fileHasLinks],
  [/vbaProject\.bin$/i, sentences.fileHasMacros],
];

/** Parts in which an area of the sheet is written, and how. */
const AREAS: readonly (readonly [path: RegExp, area: RegExp])[] = [
  [/^xl\/tables\/[^/]+\.xml$/i, /<table\s[^>]*?\bref="([^"]+)"/g],
  [/^xl\/workbook\.xml$/i, /<definedName\b[^>]*>([^<]+)</g],
  [/^xl\/worksheets\/[^/]+\.xml$/i, /<mergeCell\s+ref="([^"]+)"/g],
];

/** Cells that the areas in a text cover together, as "Log!$A$1:$B$9,Log!C1". */
const cellsCovered = (text: string): number =>
  text
    .split(",")
    .map((part) => readArea(part.slice(part.lastIndexOf("!") + 1)))
    .reduce(
      (sum, area) => sum + (area ? (area.bottom - area.top + 1) * (area.right - area.left + 1) : 0),
      0,
    );

function checkAreas(path: string, content: Uint8Array): void {
  for (const [parts, pattern] of AREAS) {
    if (!parts.test(path)) continue;
    let covered = 0;
    for (const [, text = ""] of new TextDecoder().decode(content).matchAll(pattern))
      covered += cellsCovered(text);
    if (covered > WIDEST_AREA) refuse(sentences.fileTooWide);
  }
}

/** The bytes of one part; stops as soon as there are more than are left to unpack. */
async function partBytes(chunks: AsyncIterable<Uint8Array>, left: number): Promise<Uint8Array> {
  const kept: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of chunks) {
    size += chunk.length;
    if (size > left) refuse(sentences.fileSwells);
    kept.push(chunk);
  }
  const all = new Uint8Array(size);
  let at = 0;
  for (const chunk of kept) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}

/**
 * The parts of an .xlsx file by path. Refuses, with a sentence, what is no workbook, is protected,
 * damaged, far larger unpacked than a workbook would be, or leans on other files or on macros.
 */
export async function unpack(bytes: Uint8Array): Promise<Record<string, Uint8Array>> {
  if (bytes.length > LARGEST_FILE) refuse(sentences.fileTooLarge(LARGEST_FILE / MEGABYTE));
  if (begins(bytes, COMPOUND_FILE)) refuse(sentences.fileProtected);
  if (!begins(bytes, ZIP)) refuse(sentences.notAWorkbook);
  const parts: Record<string, Uint8Array> = {};
  let left = LARGEST_UNPACKED;
  let count = 0;
  try {
    for await (const entry of unzip(bytes).entries()) {
      if (++count > MOST_PARTS) refuse(sentences.fileSwells);
      if (entry.isEncrypted) refuse(sentences.fileProtected);
      for (const [path, sentence] of REFUSED) if (path.test(entry.path)) refuse(sentence);
      if (entry.type !== "file") continue;
      const content = await partBytes(entry.stream(), left);
      left -= content.length;
      checkAreas(entry.path, content);
      parts[entry.path] = content;
    }
  } catch (error) {
    if (error instanceof PortError) throw error;
    refuse(sentences.fileBroken);
  }
  if (!parts["xl/workbook.xml"]) refuse(sentences.notAWorkbook);
  return parts;
}

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
