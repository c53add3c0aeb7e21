/** Figures as the player reads them, in the units of the settings. Text only, no arithmetic but rounding. */
import { type DistanceUnit, fromMetres, fromMps, type WindUnit } from "../../core/units";
import { isoFromDay } from "../../workbook/blueprint/isoFromDay";

/** Space that keeps a figure and its unit on one line. */
const GAP = "\u00a0";
const MINUS = "−";

/** Metres below this are worth a decimal, since one metre is more than three feet. */
const SHORT_M = 10;

const decimals = (shown: number, unit: DistanceUnit): number =>
  unit === "m" && Math.abs(shown) < SHORT_M ? 1 : 0;

/** A distance without its unit: "343", "5.8". */
export function length(metres: number, unit: DistanceUnit): string {
  const shown = fromMetres(metres, unit);
  return signed(shown.toFixed(decimals(shown, unit)));
}

/** @example distance(104.5, "ft") // "343 ft" */
export const distance = (metres: number, unit: DistanceUnit): string =>
  `${length(metres, unit)}${GAP}${unit}`;

/** @example wind(1.34, "mph") // "3 mph" */
export const wind = (mps: number, unit: WindUnit): string =>
  `${plain(fromMps(mps, unit), 1)}${GAP}${unit}`;

/** @example share(0.713) // "71 %" */
export const share = (part: number): string => `${signed(String(Math.round(part * 100)))}${GAP}%`;

/** @example strokes(2.413) // "2.41" */
export const strokes = (count: number): string => signed(count.toFixed(2));

/** @example power(1) // "smooth"; power(0.86) // "at 86 %" */
export const power = (part: number): string =>
  Math.round(part * 100) === 100 ? "smooth" : `at ${share(part)}`;

/** A number with at most so many decimals and none that say nothing. */
export const plain = (value: number, most: number): string =>
  signed(String(Number(value.toFixed(most))));

/** A serial day as yyyy-mm-dd; "" for none. */
export const day = (serial: number | null): string => (serial === null ? "" : isoFromDay(serial));

const signed = (text: string): string =>
  /^-0(\.0*)?$/.test(text) ? text.slice(1) : text.replace("-", MINUS);

/** "1 throw", "2 throws". */
export const count = (number: number, one: string, more = `${one}s`): string =>
  `${number}${GAP}${number === 1 ? one : more}`;

/** Words in a row: "a", "a and b", "a, b and c". */
export function list(words: readonly string[]): string {
  if (words.length < 2) return words.join("");
  return `${words.slice(0, -1).join(", ")} and ${words[words.length - 1]}`;
}

/** What a person typed into a number box. */
export type Typed =
  | { readonly kind: "blank" }
  | { readonly kind: "number"; readonly value: number }
  | { readonly kind: "unclear" };

/**
 * Reads a typed number. A comma is taken as a decimal sign, as phones with such a keypad send it;
 * three digits after it could as well be thousands, so that is unclear, as is all other text.
 *
 * @example numberIn("12,5") // { kind: "number", value: 12.5 }
 */
export function numberIn(text: string): Typed {
  const clean = text.trim().replace(/^[−–]/, "-");
  if (clean === "") return { kind: "blank" };
  if (!/^[-+]?(\d+([.,]\d*)?|[.,]\d+)$/.test(clean) || /^[-+]?\d+,\d{3}$/.test(clean))
    return { kind: "unclear" };
  return { kind: "number", value: Number(clean.replace(",", ".")) };
}

/** The number in a box, `blank` where it is empty, and a sentence where it is unclear. */
export function needNumber(text: string, name: string, blank: number | null = null): number {
  const typed = numberIn(text);
  if (typed.kind === "number") return typed.value;
  if (typed.kind === "blank" && blank !== null) return blank;
  throw new Error(
    typed.kind === "blank" ? `${name} is missing.` : `${name}: type a number, such as 12.5.`,
  );
}
