/**
 * Zip archives as workbooks use them. What is not replaced is copied with its compressed bytes as they
 * are, so that a part that nobody changed cannot come out different.
 * Format: PKWARE APPNOTE 6.3.10, sections 4.3.7, 4.3.12 and 4.3.16.
 */
import { deflateSync, Inflate } from "fflate";
import { PortError } from "../port";
import { sentences } from "../sentences";

const MEGABYTE = 1_000_000;
/** A log of 72,000 throws takes under 4 MB, and 40 MB unpacked. */
export const LARGEST_FILE = 25 * MEGABYTE;
const LARGEST_UNPACKED = 250 * MEGABYTE;
const MOST_PARTS = 2_000;

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
const LOCAL_SIZE = 30;
const CENTRAL_SIZE = 46;
const END_SIZE = 22;
/** Bits of the flags: the content is encrypted; its sizes follow it; its name is UTF-8. */
const ENCRYPTED = 1;
const SIZES_FOLLOW = 8;
const UTF8 = 0x800;
const STORED = 0;
const DEFLATED = 8;
/** Stands where a number is too large for its field, and another field holds it. */
const ELSEWHERE = 0xffffffff;

/** First bytes of the container that holds encrypted workbooks and old .xls files (MS-CFB 2.2). */
const COMPOUND_FILE = [0xd0, 0xcf, 0x11, 0xe0];

const begins = (bytes: Uint8Array, signature: readonly number[]): boolean =>
  signature.every((byte, index) => bytes[index] === byte);

const refuse = (sentence: string): never => {
  throw new PortError("invalid", sentence);
};

interface Entry {
  readonly path: string;
  readonly name: Uint8Array;
  readonly flags: number;
  readonly method: number;
  /** Time and date in MS-DOS format, as one number. */
  readonly time: number;
  readonly crc: number;
  readonly size: number;
  readonly packed: Uint8Array;
  readonly attributes: number;
}

/** An archive in memory. */
export class ZipArchive {
  private constructor(private readonly entries: readonly Entry[]) {}

  /**
   * Reads the directory of an archive; its parts are unpacked when they are asked for.
   * @throws PortError "invalid" where the bytes are no archive, damaged, encrypted, or far too large
   */
  static read(bytes: Uint8Array): ZipArchive {
    if (bytes.length > LARGEST_FILE) refuse(sentences.fileTooLarge(LARGEST_FILE / MEGABYTE));
    if (begins(bytes, COMPOUND_FILE)) refuse(sentences.fileProtected);
    if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) refuse(sentences.notAWorkbook);
    const entries = directory(bytes);
    if (entries.length > MOST_PARTS) refuse(sentences.fileSwells);
    if (entries.some(({ flags }) => flags & ENCRYPTED)) refuse(sentences.fileProtected);
    if (entries.reduce((sum, { size }) => sum + size, 0) > LARGEST_UNPACKED)
      refuse(sentences.fileSwells);
    return new ZipArchive(entries);
  }

  get paths(): string[] {
    return this.entries.map(({ path }) => path);
  }

  has(path: string): boolean {
    return this.find(path) !== undefined;
  }

  /** The content of a part; null where there is none. Paths match without regard to case (ECMA-376 part 2, 6.2.2.3). */
  bytes(path: string): Uint8Array | null {
    const entry = this.find(path);
    return entry === undefined ? null : unpacked(entry);
  }

  /** The same archive with other content for some of its parts. */
  replacing(parts: ReadonlyMap<string, Uint8Array>): ZipArchive {
    const byPath = new Map([...parts].map(([path, content]) => [path.toLowerCase(), content]));
    return new ZipArchive(
      this.entries.map((entry) => {
        const content = byPath.get(entry.path.toLowerCase());
        return content === undefined ? entry : packed(entry, content);
      }),
    );
  }

  toBytes(): Uint8Array {
    const locals = this.entries.reduce(
      (sum, { name, packed: data }) => sum + LOCAL_SIZE + name.length + data.length,
      0,
    );
    const centrals = this.entries.reduce((sum, { name }) => sum + CENTRAL_SIZE + name.length, 0);
    const bytes = new Uint8Array(locals + centrals + END_SIZE);
    const view = new DataView(bytes.buffer);
    let at = 0;
    let central = locals;
    for (const entry of this.entries) {
      writeHeader(view, central, CENTRAL, entry, at);
      bytes.set(entry.name, central + CENTRAL_SIZE);
      central += CENTRAL_SIZE + entry.name.length;
      writeHeader(view, at, LOCAL, entry);
      bytes.set(entry.name, at + LOCAL_SIZE);
      bytes.set(entry.packed, at + LOCAL_SIZE + entry.name.length);
      at += LOCAL_SIZE + entry.name.length + entry.packed.length;
    }
    view.setUint32(central, END, true);
    view.setUint16(central + 8, this.entries.length, true);
    view.setUint16(central + 10, this.entries.length, true);
    view.setUint32(central + 12, centrals, true);
    view.setUint32(central + 16, locals, true);
    return bytes;
  }

  private find(path: string): Entry | undefined {
    const wanted = path.toLowerCase();
    return this.entries.find((entry) => entry.path.toLowerCase() === wanted);
  }
}

/** A comment of up to 65,535 bytes may follow the end record. */
function endOf(view: DataView): number {
  const first = Math.max(0, view.byteLength - END_SIZE - 0xffff);
  for (let at = view.byteLength - END_SIZE; at >= first; at--)
    if (view.getUint32(at, true) === END) return at;
  return refuse(sentences.fileBroken);
}

function directory(bytes: Uint8Array): Entry[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    const end = endOf(view);
    let at = view.getUint32(end + 16, true);
    if (at === ELSEWHERE) refuse(sentences.fileSwells);
    return Array.from({ length: view.getUint16(end + 10, true) }, () => {
      if (view.getUint32(at, true) !== CENTRAL) refuse(sentences.fileBroken);
      const nameSize = view.getUint16(at + 28, true);
      const name = bytes.slice(at + CENTRAL_SIZE, at + CENTRAL_SIZE + nameSize);
      const flags = view.getUint16(at + 8, true);
      const packedSize = view.getUint32(at + 20, true);
      const size = view.getUint32(at + 24, true);
      const local = view.getUint32(at + 42, true);
      if ([packedSize, size, local].includes(ELSEWHERE)) refuse(sentences.fileSwells);
      const start =
        local + LOCAL_SIZE + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
      if (start + packedSize > bytes.length) refuse(sentences.fileBroken);
      const entry: Entry = {
        path: new TextDecoder().decode(name).replaceAll("\\", "/"),
        name,
        flags: flags & (ENCRYPTED | UTF8),
        method: view.getUint16(at + 10, true),
        time: view.getUint32(at + 12, true),
        crc: view.getUint32(at + 16, true),
        size,
        packed: bytes.subarray(start, start + packedSize),
        attributes: view.getUint32(at + 38, true),
      };
      at += CENTRAL_SIZE + nameSize + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
      return entry;
    });
  } catch (error) {
    if (error instanceof PortError) throw error;
    return refuse(sentences.fileBroken);
  }
}

/** Writes the fixed part of a header; a central one says where the local one is. */
function writeHeader(
  view: DataView,
  at: number,
  signature: number,
  { flags, method, time, crc, packed: data, size, name, attributes }: Entry,
  local?: number,
): void {
  view.setUint32(at, signature, true);
  const fields = local === undefined ? at + 4 : at + 6;
  if (local !== undefined) view.setUint16(at + 4, 20, true);
  view.setUint16(fields, 20, true);
  view.setUint16(fields + 2, flags & ~SIZES_FOLLOW, true);
  view.setUint16(fields + 4, method, true);
  view.setUint32(fields + 6, time, true);
  view.setUint32(fields + 10, crc, true);
  view.setUint32(fields + 14, data.length, true);
  view.setUint32(fields + 18, size, true);
  view.setUint16(fields + 22, name.length, true);
  if (local === undefined) return;
  view.setUint32(at + 38, attributes, true);
  view.setUint32(at + 42, local, true);
}

/** The whole content is never made where it is larger than the directory says. */
function unpacked({ method, packed: data, size, crc }: Entry): Uint8Array {
  if (method !== STORED && method !== DEFLATED) refuse(sentences.fileBroken);
  const content = method === STORED ? data : inflated(data, size);
  if (content.length !== size || crc32(content) !== crc) refuse(sentences.fileBroken);
  return content;
}

const PIECE = 1 << 16;

function inflated(data: Uint8Array, size: number): Uint8Array {
  const content = new Uint8Array(size);
  let at = 0;
  const stream = new Inflate((chunk) => {
    if (at + chunk.length > size) refuse(sentences.fileSwells);
    content.set(chunk, at);
    at += chunk.length;
  });
  try {
    for (let from = 0; from < data.length; from += PIECE)
      stream.push(data.subarray(from, from + PIECE), from + PIECE >= data.length);
  } catch (error) {
    if (error instanceof PortError) throw error;
    refuse(sentences.fileBroken);
  }
  return at === size ? content : content.subarray(0, at);
}

const packed = (entry: Entry, content: Uint8Array): Entry => ({
  ...entry,
  method: DEFLATED,
  crc: crc32(content),
  size: content.length,
  packed: deflateSync(content, { level: 6 }),
});

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let value = byte;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** The checksum of ISO 3309 that zip uses. */
function crc32(bytes: Uint8Array): number {
  let value = 0xffffffff;
  for (const byte of bytes) value = CRC_TABLE[(value ^ byte) & 0xff]! ^ (value >>> 8);
  return (value ^ 0xffffffff) >>> 0;
}
