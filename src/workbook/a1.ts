/** A1 references as numbers and back. Rows and columns count from 1. */
export interface Spot {
  readonly row: number;
  readonly column: number;
}

export interface Area {
  readonly top: number;
  readonly left: number;
  readonly bottom: number;
  readonly right: number;
}

/** @example columnLetters(28) // "AB" */
export function columnLetters(column: number): string {
  let letters = "";
  for (let rest = column; rest > 0; rest = Math.floor((rest - 1) / 26))
    letters = String.fromCharCode(65 + ((rest - 1) % 26)) + letters;
  return letters;
}

/** @example cellRef({ row: 5, column: 2 }) // "B5" */
export const cellRef = ({ row, column }: Spot): string => `${columnLetters(column)}${row}`;

/** @example areaRef({ top: 1, left: 1, bottom: 3, right: 2 }) // "A1:B3" */
export const areaRef = ({ top, left, bottom, right }: Area): string =>
  top === bottom && left === right
    ? cellRef({ row: top, column: left })
    : `${cellRef({ row: top, column: left })}:${cellRef({ row: bottom, column: right })}`;

/** The same area with fixed rows and columns and its sheet, as names and charts need it. */
export function fixedRef(sheet: string, { top, left, bottom, right }: Area): string {
  const corner = (row: number, column: number): string => `$${columnLetters(column)}$${row}`;
  return `${quotedSheet(sheet)}!${corner(top, left)}:${corner(bottom, right)}`;
}

/** A sheet's name as formulas need it: quoted unless it is a plain word. */
export const quotedSheet = (sheet: string): string =>
  /^[A-Za-z][A-Za-z]*$/.test(sheet) ? sheet : `'${sheet.replaceAll("'", "''")}'`;

const CELL = /^\$?([A-Z]{1,3})\$?([1-9]\d{0,6})$/i;

/** Reads "B5" or "$B$5"; null where the text is no cell. */
export function readSpot(text: string): Spot | null {
  const [, letters, digits] = CELL.exec(text) ?? [];
  if (letters === undefined || digits === undefined) return null;
  const column = [...letters.toUpperCase()].reduce(
    (sum, letter) => sum * 26 + letter.charCodeAt(0) - 64,
    0,
  );
  return { row: Number(digits), column };
}

/** Reads "A1:C9" or "B5", fixed or not, in any order of corners; null where the text is no area. */
export function readArea(text: string): Area | null {
  const [first = "", second = first, ...more] = text.split(":");
  const a = readSpot(first);
  const b = readSpot(second);
  if (!a || !b || more.length > 0) return null;
  return {
    top: Math.min(a.row, b.row),
    left: Math.min(a.column, b.column),
    bottom: Math.max(a.row, b.row),
    right: Math.max(a.column, b.column),
  };
}

/** Parts of "Log!A1:C9" or "'My log'!A1"; null where either part is missing. */
export function readSheetArea(text: string): { sheet: string; area: Area } | null {
  const [, quoted, plain, rest = ""] = /^(?:'((?:[^']|'')+)'|([^'!]+))!(.+)$/.exec(text) ?? [];
  const area = readArea(rest);
  const sheet = quoted?.replaceAll("''", "'") ?? plain;
  return area && sheet !== undefined ? { sheet, area } : null;
}
