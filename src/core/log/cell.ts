/**
 * What a spreadsheet may send as one cell, brought to one plain form. A blank comes as null,
 * undefined or ""; a single cell may come as a 1 × 1 array; a rich value (a currency, a linked
 * type) as an object with `basicValue`; an error cell as an object with a code.
 */
export type PlainCell = string | number | boolean | ErrorCell;

/** An error cell: its code as the sheet shows it, such as "#REF!". */
export class ErrorCell {
  constructor(readonly code: string) {}
}

interface RichCell {
  readonly basicValue?: unknown;
  readonly basicType?: unknown;
  readonly code?: unknown;
  readonly error?: unknown;
}

const errorCode = (rich: RichCell): string => {
  const code = [rich.code, rich.error, rich.basicValue].find(
    (part) => typeof part === "string" && part.startsWith("#"),
  );
  return typeof code === "string" ? code : "#VALUE!";
};

/** The plain form of a cell; "" for a blank. Numbers that are not finite are error cells. */
export function plainCell(cell: unknown): PlainCell {
  if (typeof cell === "string" || typeof cell === "boolean") return cell;
  if (typeof cell === "number") return Number.isFinite(cell) ? cell : new ErrorCell("#NUM!");
  if (cell === null || cell === undefined) return "";
  if (cell instanceof ErrorCell) return cell;
  if (Array.isArray(cell)) {
    return cell.length === 1 ? plainCell(cell[0]) : new ErrorCell("#VALUE!");
  }
  if (typeof cell !== "object") return new ErrorCell("#VALUE!");
  const rich = cell as RichCell;
  const holdsError =
    rich.basicType === "Error" || rich.code !== undefined || rich.error !== undefined;
  return holdsError || rich.basicValue === undefined || typeof rich.basicValue === "object"
    ? new ErrorCell(errorCode(rich))
    : plainCell(rich.basicValue);
}

/** Whether a plain cell is blank: empty text, or nothing but white space. */
export const isBlank = (cell: PlainCell): boolean =>
  typeof cell === "string" && (cell === "" || cell.trim() === "");

/** How a cell is named in a sentence: its kind and, for text, the start of it. */
export function describeCell(cell: PlainCell): string {
  if (cell instanceof ErrorCell) return `an error, ${cell.code}`;
  if (typeof cell === "boolean") return cell ? "TRUE" : "FALSE";
  if (typeof cell === "number") return `${cell}`;
  const shown = cell.length > 40 ? `${cell.slice(0, 39)}…` : cell;
  return isBlank(cell) ? "blank" : `text, '${shown}'`;
}
