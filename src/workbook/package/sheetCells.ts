/** The cells of a worksheet part, one after the other as they are stored (ECMA-376 part 1, 18.3.1). */
import { readSpot } from "../a1";
import { PortError, type CellValue } from "../port";
import { sentences } from "../sentences";
import { attributeOf, attributesOf, TagReader, textOf, type Tag } from "./xml";

/** Limits of a sheet (Excel specifications and limits; ECMA-376 part 1, 18.3.1.73 has none). */
export const LAST_ROW = 1_048_576;
export const LAST_COLUMN = 16_384;

export interface StoredFormula {
  /** As stored; "" where a shared formula is written elsewhere. */
  readonly text: string;
  readonly kind: "normal" | "array" | "shared" | "dataTable";
  /** Cells that an array fills, or that share the formula. */
  readonly ref?: string;
  /** By which cells share a formula. */
  readonly shared?: string;
}

/** One `<c>`, with its places in the text. Good until the next one is asked for. */
export interface StoredCell {
  readonly row: number;
  readonly column: number;
  readonly tag: Tag;
  /** Index after the element. */
  readonly end: number;
  /** Index of the style (cellXfs). */
  readonly style: number;
  /** Whether a dynamic array starts here (cell metadata). */
  readonly dynamic: boolean;
  /** "n" number, "s" shared string, "str", "inlineStr", "b", "e" or "d" an ISO date. */
  readonly type: string;
  readonly formula: StoredFormula | null;
  readonly formulaTag: Tag | null;
  /** Where the stored value is, with its tags; null where there is none. */
  readonly value: { readonly start: number; readonly end: number } | null;
  /** Text of the stored value; undefined where there is none. */
  readonly stored: string | undefined;
}

export interface StoredRow {
  readonly row: number;
  readonly tag: Tag;
}

export interface SheetVisitor {
  readonly row?: (row: StoredRow) => void;
  readonly cell?: (cell: StoredCell) => void;
  /** A row's cells end at this index. */
  readonly rowEnd?: (row: StoredRow, index: number) => void;
  /** The `<sheetData>` element ends at this index. */
  readonly end?: (index: number) => void;
}

/** Goes through the rows and cells of a sheet. What lies beyond Excel's limits is passed over. */
export function visitCells(xml: string, visitor: SheetVisitor): void {
  const reader = new TagReader(xml);
  const data = reader.find("sheetData");
  if (!data || data.kind === "empty") return;
  let row = 0;
  let column = 0;
  let open: StoredRow | null = null;
  for (let tag = reader.next(); tag; tag = reader.next()) {
    if (tag.kind === "close") {
      if (tag.name === "row" && open && row <= LAST_ROW) visitor.rowEnd?.(open, tag.start);
      if (tag.name !== "sheetData") continue;
      visitor.end?.(tag.start);
      return;
    }
    if (tag.name === "row") {
      row = whole(attributeOf(xml, tag, "r")) ?? row + 1;
      column = 0;
      open = { row, tag };
      if (row > LAST_ROW) continue;
      visitor.row?.(open);
      if (tag.kind === "empty") visitor.rowEnd?.(open, tag.end);
    } else if (tag.name === "c") {
      const spot = readSpot(attributeOf(xml, tag, "r") ?? "");
      column = spot?.column ?? column + 1;
      if (row > LAST_ROW || column > LAST_COLUMN) reader.skip(tag);
      else {
        const cell = cellAt(reader, tag, row, column);
        visitor.cell?.(cell);
      }
    } else reader.skip(tag);
  }
  throw new PortError("invalid", sentences.fileBroken);
}

const whole = (text: string | undefined): number | null =>
  text !== undefined && /^\d+$/.test(text) ? Number(text) : null;

function cellAt(reader: TagReader, tag: Tag, row: number, column: number): StoredCell {
  const { xml } = reader;
  let formula: StoredFormula | null = null;
  let formulaTag: Tag | null = null;
  let value: StoredCell["value"] = null;
  let stored: string | undefined;
  let end = tag.end;
  if (tag.kind === "open")
    for (let inner = reader.next(); inner; inner = reader.next()) {
      end = inner.end;
      if (inner.kind === "close") break;
      const close = reader.skip(inner);
      const text = inner.kind === "empty" ? "" : xml.slice(inner.end, close.start);
      if (inner.name === "f") {
        formula = formulaOf(xml, inner, textOf(text));
        formulaTag = { ...inner, end: close.end };
      } else if (inner.name === "v") {
        value = { start: inner.start, end: close.end };
        stored = textOf(text);
      } else if (inner.name === "is") {
        value = { start: inner.start, end: close.end };
        stored = richText(text);
      }
    }
  return {
    row,
    column,
    tag,
    end,
    style: Number(attributeOf(xml, tag, "s") ?? 0),
    dynamic: (attributeOf(xml, tag, "cm") ?? "0") !== "0",
    type: attributeOf(xml, tag, "t") ?? "n",
    formula,
    formulaTag,
    value,
    stored,
  };
}

function formulaOf(xml: string, tag: Tag, text: string): StoredFormula {
  const { t = "normal", ref, si } = attributesOf(xml, tag);
  return {
    text,
    kind: t as StoredFormula["kind"],
    ...(ref === undefined ? {} : { ref }),
    ...(si === undefined ? {} : { shared: si }),
  };
}

/** Text of a rich string: its runs put together, without the reading aids of Japanese (18.4.6). */
export function richText(xml: string): string {
  const reader = new TagReader(xml);
  let text = "";
  for (let tag = reader.next(); tag; tag = reader.next()) {
    if (tag.kind === "close") continue;
    if (tag.name === "t") text += unescaped(reader.text(tag));
    else if (tag.name === "rPh") reader.skip(tag);
  }
  return text;
}

/** Characters that XML has no room for are stored as _x000D_ (ECMA-376 part 1, 22.9.2.19). */
export const unescaped = (text: string): string =>
  text.includes("_x")
    ? text.replace(/_x([0-9A-Fa-f]{4})_/g, (_, code: string) =>
        String.fromCharCode(parseInt(code, 16)),
      )
    : text;

/** The strings that cells of type "s" name by their index. */
export function sharedStrings(xml: string): string[] {
  const reader = new TagReader(xml);
  const strings: string[] = [];
  for (let tag = reader.find("si"); tag; tag = reader.find("si")) {
    const close = reader.skip(tag);
    strings.push(tag.kind === "empty" ? "" : richText(xml.slice(tag.end, close.start)));
  }
  return strings;
}

/** Days between the two ways to count them. */
const DAYS_TO_1904 = 1462;

/** What a stored value is in the port's values. Days of a 1904 workbook stay as that workbook counts them. */
export function valueOf(
  { type, stored }: Pick<StoredCell, "type" | "stored">,
  strings: readonly string[],
): CellValue {
  if (stored === undefined) return "";
  switch (type) {
    case "s":
      return strings[Number(stored)] ?? "";
    case "str":
      return unescaped(stored);
    case "inlineStr":
      return stored;
    case "b":
      return stored.trim() === "1" || stored.trim() === "true";
    case "e":
      return { error: stored.trim() };
    case "d":
      return isoDay(stored.trim());
    default: {
      const number = Number(stored);
      return stored.trim() === "" || !Number.isFinite(number) ? "" : number;
    }
  }
}

const MS_PER_DAY = 86_400_000;
const UNIX_DAY_0 = 25_569;

function isoDay(text: string): CellValue {
  const time = Date.parse(
    /Z|[+-]\d\d:?\d\d$/.test(text) || !text.includes("T") ? text : `${text}Z`,
  );
  return Number.isNaN(time) ? text : time / MS_PER_DAY + UNIX_DAY_0;
}

/** A serial day of a 1904 workbook as all others count it. */
export const from1904 = (serial: number): number => serial + DAYS_TO_1904;
