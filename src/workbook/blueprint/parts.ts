/** Small building blocks that the sheets share. */
import type { CellsPlan, ListRule, NumberFormat, Style } from "./types";
import type { CellValue } from "../port";

/** Flight classes that the bag may name; any other text is allowed and means "not known". */
export const TYPES: ListRule = {
  values: ["putter", "midrange", "fairway", "distance"],
  strict: false,
};
/** Lines of flight. On a throw, "off" says that it does not count. */
export const LINES: ListRule = { values: ["straight", "hyzer", "anhyzer"], strict: false };
export const THROW_LINES: ListRule = {
  values: ["straight", "hyzer", "anhyzer", "off"],
  strict: false,
};
export const DISC_NAMES: ListRule = { column: "Bag[Disc]", strict: false };
export const YES_NO: ListRule = { values: ["yes", "no"], strict: false };

export const WHOLE: NumberFormat = "0";
export const SIGNED: NumberFormat = "+0;-0;0";
export const SHARE: NumberFormat = "0%";
export const STROKES: NumberFormat = "0.00";
export const DAY: NumberFormat = "yyyy-mm-dd";
export const TEXT: NumberFormat = "General";

export const text = (at: string, style: Style, ...lines: string[]): CellsPlan => ({
  kind: "cells",
  at,
  style,
  values: lines.map((line) => [line]),
});

/** Label, input and hint side by side. */
export const input = (at: string, label: string, value: CellValue, hint: string): CellsPlan => ({
  kind: "cells",
  at,
  values: [[label, value, hint]],
  styles: ["label", "input", "hint"],
});

/** True while the log holds no carry, so that an empty book shows no errors. */
export const NOTHING_LOGGED = "COUNT(Throws[Carry])=0";

/** The formula, or a few words while there is nothing to answer from. */
export const unless = (condition: string, formula: string, words = ""): string =>
  `=IF(${condition},"${words}",${formula})`;

export const onceLogged = (formula: string, words?: string): string =>
  unless(NOTHING_LOGGED, formula, words);
