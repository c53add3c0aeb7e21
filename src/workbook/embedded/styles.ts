/** How each role of the blueprint looks in the embedded workbook. The page's dark theme turns these colours over. */
import { BooleanNumber, HorizontalAlign, WrapStrategy, type IStyleData } from "@univerjs/core";
import type { NumberFormat, Style } from "../blueprint/types";

const FONT = { ff: "Arial" };
const ink = (rgb: string): IStyleData => ({ cl: { rgb } });
const fill = (rgb: string): IStyleData => ({ bg: { rgb } });
const bold: IStyleData = { bl: BooleanNumber.TRUE };

const DARK = "#1c2326";
const GREY = "#5b666b";
export const ACCENT = "#0b5560";

const LOOKS: Record<Style, IStyleData> = {
  plain: { fs: 11, ...ink(DARK) },
  title: { fs: 20, ...bold, ...ink(DARK) },
  lead: { fs: 12, ...ink(GREY) },
  heading: { fs: 12, ...bold, ...ink(ACCENT) },
  label: { fs: 11, ...ink(GREY) },
  input: { fs: 11, ...ink(DARK), ...fill("#e4f0f2"), ht: HorizontalAlign.LEFT },
  answer: { fs: 14, ...bold, ...ink(DARK), ht: HorizontalAlign.LEFT },
  figure: { fs: 11, ...ink(DARK), ht: HorizontalAlign.LEFT },
  hint: { fs: 9, ...ink(GREY) },
  caution: { fs: 11, ...bold, ...ink("#8a3b12"), tb: WrapStrategy.OVERFLOW },
};

/** Header of a table or of a spill. */
export const HEADER: IStyleData = {
  ...FONT,
  fs: 11,
  ...bold,
  ...ink("#ffffff"),
  ...fill(ACCENT),
};

/** In rows of a table or a spill nothing stands out by size, and numbers keep to the right. */
const inRows = (role: Style): IStyleData => {
  const look = LOOKS[role];
  return { ...look, fs: Math.min(look.fs ?? 11, 11), ht: HorizontalAlign.UNSPECIFIED };
};

/** A role and a number format as one cell style, the same object for the same pair. */
const made = new Map<string, IStyleData>();
export function styleOf(role: Style = "plain", format?: NumberFormat, rows = false): IStyleData {
  const key = `${role}|${format ?? ""}|${rows}`;
  const known = made.get(key);
  if (known !== undefined) return known;
  const look = rows ? inRows(role) : LOOKS[role];
  const style = { ...FONT, ...look, ...(format ? { n: { pattern: format } } : {}) };
  made.set(key, style);
  return style;
}
