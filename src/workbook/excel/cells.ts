/** Cell values between the port and Excel. */
import { PortError, type CellError, type CellValue } from "../port";
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
