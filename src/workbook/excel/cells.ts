/** Cell values between the port and Excel. */
import type { Style } from "../blueprint/types";
import { type CellError, type CellValue, PortError } from "../port";
import { sentences } from "../sentences";

type Matrix = readonly (readonly unknown[])[];

/** What must be loaded of a range so that its values can be told apart. */
export const VALUES = "values,valueTypes";

const isCellError = (value: CellValue): value is CellError => typeof value === "object";

/** Excel sends an error as its text; only the kind of the value tells it from typed text. */
function fromExcel(value: unknown, kind: unknown): CellValue {
  if (kind === "Error") return { error: String(value) };
  if (typeof value === "number" || typeof value === "boolean") return value;
  return value === null || value === undefined ? "" : String(value);
}

export const valuesOf = (range: Excel.Range): CellValue[][] =>
  (range.values as Matrix).map((row, down) =>
    row.map((value, right) => fromExcel(value, range.valueTypes[down]?.[right])),
  );

/** Words that Excel takes for text whatever the language: no digit, no sign, no TRUE or FALSE. */
const PLAIN_WORDS = /^(?!(?:true|false)$)\p{L}[\p{L} ]*$/iu;

/**
 * The same value as Excel takes it. Excel reads meaning into text ("1/2" becomes a date, "=1+1" a
 * formula), so all but plain words go in behind the apostrophe that marks text.
 */
export function toExcel(value: CellValue): string | number | boolean {
  if (isCellError(value)) return value.error;
  if (typeof value === "number" && !Number.isFinite(value))
    throw new PortError("invalid", sentences.notANumber);
  if (typeof value !== "string" || value === "" || PLAIN_WORDS.test(value)) return value;
  return `'${value}`;
}

export const sameValue = (a: CellValue, b: CellValue): boolean =>
  isCellError(a) && isCellError(b) ? a.error === b.error : a === b;

/** Text that begins like a formula is its own value; a formula is not. */
export const isFormula = (formula: unknown, value: unknown): formula is string =>
  typeof formula === "string" && formula.startsWith("=") && formula !== value;

/** What brings a cell back to what it was: its formula, or its value. */
export const restoring = (formula: unknown, value: CellValue): string | number | boolean =>
  isFormula(formula, value) ? formula : toExcel(value);

// How each role of the blueprint looks in Excel.

export interface Look {
  readonly size: number;
  readonly colour: string;
  readonly bold?: boolean;
  readonly fill?: string;
  /** A thin line under the cell. */
  readonly ruled?: boolean;
  readonly left?: boolean;
}

const FONT = "Arial";
const DARK = "#1C2326";
const GREY = "#5B666B";
export const ACCENT = "#0B6E75";
export const CHART_GREY = "#8A969B";
export const LINE = "#C9D1D4";
/** Colour of the bars in cells. */
export const BAR = "#B9D6D8";

export const LOOKS: Readonly<Record<Style, Look>> = {
  plain: { size: 11, colour: DARK },
  title: { size: 20, colour: DARK, bold: true },
  lead: { size: 12, colour: GREY },
  heading: { size: 12, colour: ACCENT, bold: true },
  label: { size: 11, colour: GREY },
  input: { size: 11, colour: DARK, fill: "#E6F1F2", ruled: true, left: true },
  answer: { size: 14, colour: DARK, bold: true, left: true },
  figure: { size: 11, colour: DARK, left: true },
  hint: { size: 9, colour: GREY },
  caution: { size: 11, colour: "#8A3B12", bold: true },
};

/** Header of a table or of a spill. */
export const HEADER: Look = {
  ...{ size: 11, colour: DARK, bold: true },
  ...{ fill: "#DFE5E7", ruled: true, left: true },
};

/** Gives a range its look and, where there is one, its number format. */
export function dress(range: Excel.Range, look: Look, format?: string): void {
  const { font, fill, borders } = range.format;
  font.set({ name: FONT, size: look.size, color: look.colour, bold: look.bold ?? false });
  range.format.verticalAlignment = "Center";
  if (look.fill !== undefined) fill.color = look.fill;
  if (look.left) range.format.horizontalAlignment = "Left";
  if (look.ruled) borders.getItem("EdgeBottom").set({ style: "Continuous", color: LINE });
  // One value for a whole range is taken for all of its cells.
  if (format !== undefined && format !== "General")
    range.numberFormat = format as unknown as string[][];
}

/** A width in characters as the width in points that Excel's client library takes. */
export const widthOf = (characters: number): number => (characters * 7 + 5) * 0.75;
