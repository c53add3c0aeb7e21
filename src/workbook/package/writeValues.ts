/** Puts stored values into a worksheet part, in place: every byte that says something else stays. */
import { cellRef } from "../a1";
import type { CellValue } from "../port";
import { visitCells, type StoredCell, type StoredRow } from "./sheetCells";
import { attributeSpans, encodeText, splice, type Splice, type Tag } from "./xml";

export interface NewValue {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  /** The cells that the formula of this one fills now, where they have changed. */
  readonly fills?: string;
  /** Index of the style that a cell gets which is not there yet. */
  readonly style?: number;
  /** Formula that a cell gets which is not there yet, as files write it. */
  readonly formula?: string;
}

/** Errors that a cell can store by their text (ECMA-376 part 1, 18.17.2.7); the newer ones are #VALUE! with a note. */
const STORED_ERRORS = ["#NULL!", "#DIV/0!", "#VALUE!", "#REF!", "#NAME?", "#NUM!", "#N/A"];

/** An error as a file can hold it. */
export const storedError = (error: string): string =>
  STORED_ERRORS.includes(error)
    ? error
    : error === "#SPILL!" || error === "#CALC!"
      ? "#VALUE!"
      : "#N/A";

interface Written {
  /** Type attribute; undefined for a number, which needs none. */
  readonly type?: string;
  readonly text: string;
}

/** Characters that XML cannot hold, and text that would be read as one of them (22.9.2.19). */
// eslint-disable-next-line no-control-regex
const UNSTORABLE = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;
export const escaped = (text: string): string =>
  text
    .replace(/_x[0-9A-Fa-f]{4}_/g, (found) => `_x005F${found}`)
    .replace(
      UNSTORABLE,
      (found) => `_x${found.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0")}_`,
    );

function written(value: CellValue): Written {
  if (typeof value === "number")
    return Number.isFinite(value) ? { text: String(value) } : { type: "e", text: "#NUM!" };
  if (typeof value === "boolean") return { type: "b", text: value ? "1" : "0" };
  if (typeof value === "object") return { type: "e", text: storedError(value.error) };
  return { type: "str", text: encodeText(escaped(value)) };
}

const spaced = (text: string): string => (/^\s|\s$|\n/.test(text) ? ' xml:space="preserve"' : "");

/** The prefix of an element's name, with its colon. */
const prefixOf = (xml: string, { start }: Tag): string =>
  /^<([^\s:/>]+:)/.exec(xml.slice(start, start + 40))?.[1] ?? "";

const valueElement = (prefix: string, { text }: Written): string =>
  `<${prefix}v${spaced(text)}>${text}</${prefix}v>`;

/** A start tag with its type as given, and without the note on a rich value that is gone. */
function startTag(xml: string, tag: Tag, type: string | undefined): string {
  const spans = attributeSpans(xml, tag);
  const changes: Splice[] = [];
  for (const { name, start, end } of spans) {
    if (name === "t" && type !== undefined) changes.push({ start, end, text: type });
    else if (name === "t" || name === "vm") {
      const from = xml.lastIndexOf(name, start);
      changes.push({ start: from - 1, end: end + 1, text: "" });
    }
  }
  const head = tag.kind === "empty" ? xml.slice(0, tag.end - 2) : xml.slice(0, tag.end - 1);
  const text = splice(head, changes).slice(tag.start).trimEnd();
  const hasType = spans.some(({ name }) => name === "t");
  return `${text}${type !== undefined && !hasType ? ` t="${type}"` : ""}`;
}

/** A cell's element with another value. A cell without a formula and without a value keeps its look only. */
function cellElement(xml: string, cell: StoredCell, { value, fills }: NewValue): string {
  const prefix = prefixOf(xml, cell.tag);
  const isBlank = value === "" && cell.formula === null;
  const next = written(value);
  const start = startTag(xml, cell.tag, isBlank ? undefined : next.type);
  if (isBlank) return `${start}/>`;
  const formula = cell.formulaTag ? formulaElement(xml, cell.formulaTag, fills) : "";
  const extra = cell.tag.kind === "open" ? extraOf(xml, cell) : "";
  return `${start}>${formula}${valueElement(prefix, next)}${extra}</${prefix}c>`;
}

function formulaElement(xml: string, tag: Tag, fills: string | undefined): string {
  const whole = xml.slice(tag.start, tag.end);
  if (fills === undefined) return whole;
  const head = { ...tag, end: tag.start + whole.indexOf(">") + 1 };
  const ref = attributeSpans(xml, head).find(({ name }) => name === "ref");
  if (!ref) return whole;
  return xml.slice(tag.start, ref.start) + fills + xml.slice(ref.end, tag.end);
}

/** What programs may store behind the value (extLst). */
function extraOf(xml: string, { tag, end, value, formulaTag }: StoredCell): string {
  const close = xml.lastIndexOf("</", end - 1);
  const from = value?.end ?? formulaTag?.end ?? tag.end;
  return xml.slice(from, close).trim();
}

function newCell(prefix: string, { row, column, value, style, formula }: NewValue): string {
  const { type, text } = written(value);
  const look = style === undefined ? "" : ` s="${style}"`;
  const kind = type === undefined || value === "" ? "" : ` t="${type}"`;
  const asked = formula === undefined ? "" : `<${prefix}f>${encodeText(formula)}</${prefix}f>`;
  const stored = value === "" ? "" : valueElement(prefix, { text });
  return `<${prefix}c r="${cellRef({ row, column })}"${look}${kind}>${asked}${stored}</${prefix}c>`;
}

/**
 * @param xml the worksheet part
 * @param values new values, in any order; one that is "" takes a value away
 * @returns the part with just these values changed; cells and rows that are not there yet are made
 */
export function writeValues(xml: string, values: readonly NewValue[]): string {
  const byRow = new Map<number, NewValue[]>();
  for (const value of values) {
    const row = byRow.get(value.row) ?? [];
    row.push(value);
    byRow.set(value.row, row);
  }
  for (const row of byRow.values()) row.sort((a, b) => a.column - b.column);
  const rows = [...byRow.keys()].sort((a, b) => a - b);
  let nextRow = 0;
  let pending: NewValue[] = [];
  let prefix = "";
  const changes: Splice[] = [];
  const insert = (at: number, text: string): void => {
    if (text !== "") changes.push({ start: at, end: at, text });
  };
  const cells = (wanted: readonly NewValue[]): string =>
    wanted
      .filter(({ value, formula }) => value !== "" || formula !== undefined)
      .map((value) => newCell(prefix, value))
      .join("");
  const rowsBefore = (row: number): string => {
    let text = "";
    for (; nextRow < rows.length && rows[nextRow]! < row; nextRow++) {
      const inside = cells(byRow.get(rows[nextRow]!)!);
      if (inside !== "") text += `<${prefix}row r="${rows[nextRow]}">${inside}</${prefix}row>`;
    }
    return text;
  };
  const takeBefore = (column: number): NewValue[] => {
    const index = pending.findIndex((value) => value.column >= column);
    return pending.splice(0, index < 0 ? pending.length : index);
  };
  visitCells(xml, {
    row: ({ row, tag }: StoredRow) => {
      prefix = prefixOf(xml, tag);
      insert(tag.start, rowsBefore(row));
      pending = [];
      if (rows[nextRow] === row) pending = [...byRow.get(rows[nextRow++]!)!];
    },
    cell: (cell) => {
      if (pending.length === 0) return;
      insert(cell.tag.start, cells(takeBefore(cell.column)));
      if (pending[0]?.column !== cell.column) return;
      const text = cellElement(xml, cell, pending.shift()!);
      changes.push({ start: cell.tag.start, end: cell.end, text });
    },
    rowEnd: ({ tag }, index) => {
      const text = cells(pending.splice(0));
      if (text === "") return;
      if (tag.kind === "open") insert(index, text);
      else
        changes.push({
          start: tag.start,
          end: tag.end,
          text: `${xml.slice(tag.start, tag.end - 2).trimEnd()}>${text}</${prefix}row>`,
        });
    },
    end: (index) => insert(index, rowsBefore(Infinity)),
  });
  return splice(xml, changes);
}
