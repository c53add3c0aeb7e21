/**
 * Reads XML without building a tree: tag by tag with their places in the text, so that a change can be
 * spliced in and every other byte stays. Nothing outside the document is ever read, and no entity but
 * the five of XML is known (XML 1.0, 4.6).
 */

export interface Tag {
  /** Local name, without a prefix. */
  readonly name: string;
  readonly kind: "open" | "close" | "empty";
  /** Index of "<", and the index after ">". */
  readonly start: number;
  readonly end: number;
}

const LESS = 60;
const GREATER = 62;
const QUOTE = 34;
const APOSTROPHE = 39;
const SLASH = 47;
const COLON = 58;
const BLANK = 32;

/** Index after the ">" that ends a tag: one inside an attribute's value does not. */
function tagEnd(xml: string, from: number): number {
  let quote = 0;
  for (let at = from; at < xml.length; at++) {
    const code = xml.charCodeAt(at);
    if (quote !== 0) {
      if (code === quote) quote = 0;
    } else if (code === GREATER) return at + 1;
    else if (code === QUOTE || code === APOSTROPHE) quote = code;
  }
  return -1;
}

const after = (xml: string, text: string, from: number): number => {
  const at = xml.indexOf(text, from);
  return at < 0 ? xml.length : at + text.length;
};

/** Goes through the tags of a document in order; comments, CDATA and instructions are passed over. */
export class TagReader {
  constructor(
    readonly xml: string,
    private at = 0,
  ) {}

  /** null at the end of the document. */
  next(): Tag | null {
    const { xml } = this;
    for (;;) {
      const start = xml.indexOf("<", this.at);
      if (start < 0) return null;
      const next = xml.charCodeAt(start + 1);
      if (next === 33) {
        // "!": a comment, CDATA or a document type
        if (xml.startsWith("<!--", start)) this.at = after(xml, "-->", start + 4);
        else if (xml.startsWith("<![CDATA[", start)) this.at = after(xml, "]]>", start + 9);
        else this.at = after(xml, ">", start);
        continue;
      }
      if (next === 63) {
        this.at = after(xml, "?>", start);
        continue;
      }
      const end = tagEnd(xml, start + 1);
      if (end < 0) return null;
      this.at = end;
      return { name: nameAt(xml, start, end), kind: kindOf(xml, next, end), start, end };
    }
  }

  /** The next tag by that name which opens; null where there is none. */
  find(name: string): Tag | null {
    for (let tag = this.next(); tag; tag = this.next())
      if (tag.name === name && tag.kind !== "close") return tag;
    return null;
  }

  /** Passes over what an element holds; returns the tag that closes it. */
  skip(open: Tag): Tag {
    if (open.kind !== "open") return open;
    let depth = 1;
    for (let tag = this.next(); tag; tag = this.next()) {
      if (tag.kind === "open") depth++;
      else if (tag.kind === "close" && --depth === 0) return tag;
    }
    return { ...open, kind: "close", start: this.xml.length, end: this.xml.length };
  }

  /** Tags directly inside an element; each may be read further with `skip` or by this again. */
  *children(open: Tag): Generator<Tag> {
    if (open.kind !== "open") return;
    for (let tag = this.next(); tag && tag.kind !== "close"; tag = this.next()) {
      const before = this.at;
      yield tag;
      if (tag.kind === "open" && this.at === before) this.skip(tag);
    }
  }

  /** The decoded text that an element holds, tags inside it left out; the reader is behind it then. */
  text(open: Tag): string {
    const close = this.skip(open);
    return close === open ? "" : textOf(this.xml.slice(open.end, close.start));
  }
}

const kindOf = (xml: string, next: number, end: number): Tag["kind"] =>
  next === SLASH ? "close" : xml.charCodeAt(end - 2) === SLASH ? "empty" : "open";

function nameAt(xml: string, start: number, end: number): string {
  let from = start + (xml.charCodeAt(start + 1) === SLASH ? 2 : 1);
  let at = from;
  for (; at < end; at++) {
    const code = xml.charCodeAt(at);
    if (code === COLON) from = at + 1;
    else if (code <= BLANK || code === GREATER || code === SLASH || code === LESS) break;
  }
  return xml.slice(from, at);
}

const ENTITIES: Readonly<Record<string, string>> = {
  amp: "&",
  lt: "<",
  gt: ">",
  quot: '"',
  apos: "'",
};

/** Text with its entities and character references read. */
export function decodeEntities(text: string): string {
  if (!text.includes("&")) return text;
  return text.replace(/&(#x[0-9a-f]+|#\d+|[a-z]+);/gi, (whole, name: string) => {
    if (!name.startsWith("#")) return ENTITIES[name] ?? whole;
    const code = /^#x/i.test(name) ? parseInt(name.slice(2), 16) : Number(name.slice(1));
    return code <= 0x10ffff ? String.fromCodePoint(code) : whole;
  });
}

/** Text of a stretch of XML, whatever tags are in it; line ends are as XML reads them (XML 1.0, 2.11). */
export function textOf(xml: string): string {
  if (!xml.includes("<")) return decodeEntities(xml.includes("\r") ? lineEnds(xml) : xml);
  return lineEnds(xml)
    .split(/(<!\[CDATA\[[\s\S]*?\]\]>)/)
    .map((part, index) =>
      index % 2 === 1
        ? part.slice(9, -3)
        : decodeEntities(part.replace(/<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<[^>]*>/g, "")),
    )
    .join("");
}

const lineEnds = (xml: string): string => xml.replace(/\r\n?/g, "\n");

export const encodeText = (text: string): string =>
  text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;").replace(/\r/g, "&#13;");

export const encodeAttribute = (text: string): string =>
  encodeText(text).replace(/"/g, "&quot;").replace(/\n/g, "&#10;").replace(/\t/g, "&#9;");

export interface AttributeSpan {
  readonly name: string;
  /** Of the value, between its quotes. */
  readonly start: number;
  readonly end: number;
}

/** The attributes of a tag with the places of their values. */
export function attributeSpans(xml: string, tag: Tag): AttributeSpan[] {
  const found: AttributeSpan[] = [];
  const pattern = /([^\s=<>/"']+)\s*=\s*("[^"]*"|'[^']*')/g;
  const text = xml.slice(tag.start, tag.end);
  for (let match = pattern.exec(text); match; match = pattern.exec(text)) {
    const end = tag.start + pattern.lastIndex - 1;
    found.push({ name: match[1]!, start: end - match[2]!.length + 2, end });
  }
  return found;
}

/** All attributes of a tag, decoded, by name with their prefix ("r:id"). */
export const attributesOf = (xml: string, tag: Tag): Record<string, string> =>
  Object.fromEntries(
    attributeSpans(xml, tag).map(({ name, start, end }) => [
      name,
      decodeEntities(xml.slice(start, end)),
    ]),
  );

/** One attribute of a tag without a prefix; undefined where it has none. Quicker than all of them. */
export function attributeOf(xml: string, tag: Tag, name: string): string | undefined {
  const text = xml.slice(tag.start, tag.end);
  for (let at = text.indexOf(name); at >= 0; at = text.indexOf(name, at + 1)) {
    if (text.charCodeAt(at - 1) > BLANK) continue;
    const quoteAt = at + name.length + 1;
    const quote = text[quoteAt];
    // The rare tag that has blanks around "=", or the name inside another attribute's value.
    if (text[quoteAt - 1] !== "=" || (quote !== '"' && quote !== "'"))
      return attributesOf(xml, tag)[name];
    return decodeEntities(text.slice(quoteAt + 1, text.indexOf(quote, quoteAt + 1)));
  }
  return undefined;
}

export interface Splice {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

/** The text with stretches of it replaced; they may not overlap, and come in the order of the text. */
export function splice(text: string, changes: readonly Splice[]): string {
  const parts: string[] = [];
  let at = 0;
  for (const { start, end, text: put } of changes) {
    parts.push(text.slice(at, start), put);
    at = end;
  }
  parts.push(text.slice(at));
  return parts.join("");
}

const DECODER = { fatal: true, ignoreBOM: true } as const;

/** XML of a part as text; encoding it again gives the same bytes. */
export function decodeXml(bytes: Uint8Array): string {
  const utf16 = bytes[0] === 0xff && bytes[1] === 0xfe;
  return new TextDecoder(utf16 ? "utf-16le" : "utf-8", DECODER).decode(bytes);
}

const DECLARES_UTF16 = /^\uFEFF?<\?xml[^>]*encoding\s*=\s*["']utf-16/i;

/** The bytes of a part again, in the encoding that it declares. */
export function encodeXml(text: string): Uint8Array {
  if (!DECLARES_UTF16.test(text)) return new TextEncoder().encode(text);
  const bytes = new Uint8Array(text.length * 2);
  const view = new DataView(bytes.buffer);
  for (let at = 0; at < text.length; at++) view.setUint16(at * 2, text.charCodeAt(at), true);
  return bytes;
}
