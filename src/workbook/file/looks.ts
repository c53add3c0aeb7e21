import type { Borders, Fill, Style as FileStyle } from "@cj-tech-master/excelts";
import type { NumberFormat, Style } from "../blueprint/types";

const DARK = "FF1C2326";
const GREY = "FF5B666B";
const ACCENT = "FF0B6E75";
const CAUTION = "FF8A3B12";
const LINE = "FFC9D1D4";

/** Colour of the bars in cells. */
export const BAR = "FFB9D6D8";
export const CHART_ACCENT = ACCENT.slice(2);
export const CHART_GREY = "8A969B";
export const CHART_LINE = LINE.slice(2);

type Look = Partial<FileStyle>;

const font = (size: number, colour: string, bold = false): Look => ({
  font: { name: "Arial", size, bold, color: { argb: colour } },
});
const fill = (argb: string): { fill: Fill } => ({
  fill: { type: "pattern", pattern: "solid", fgColor: { argb } },
});
const under: { border: Partial<Borders> } = {
  border: { bottom: { style: "thin", color: { argb: LINE } } },
};
const left: Look = { alignment: { horizontal: "left", vertical: "middle" } };
const middle: Look = { alignment: { vertical: "middle" } };

const LOOKS: Record<Style, Look> = {
  plain: { ...font(11, DARK), ...left },
  title: { ...font(20, DARK, true), ...left },
  lead: { ...font(12, GREY), ...middle },
  heading: { ...font(12, ACCENT, true), ...middle },
  label: { ...font(11, GREY), ...middle },
  input: { ...font(11, DARK), ...fill("FFE6F1F2"), ...under, ...left },
  answer: { ...font(14, DARK, true), ...left },
  figure: { ...font(11, DARK), ...left },
  hint: { ...font(9, GREY), ...middle },
  caution: { ...font(11, CAUTION, true), ...middle },
};

const HEADER: Look = { ...font(11, DARK, true), ...fill("FFDFE5E7"), ...under, ...left };

const made = new Map<string, Look>();
const once = (key: string, make: () => Look): Look => {
  const known = made.get(key) ?? make();
  made.set(key, known);
  return known;
};

/** How a role looks, with its number format; the same object for the same pair. */
export const lookOf = (style: Style = "plain", format?: NumberFormat): Look =>
  once(`${style}|${format ?? ""}`, () => ({
    ...LOOKS[style],
    ...(format === undefined || format === "General" ? {} : { numFmt: format }),
  }));

/** Header of a table or of a spill. */
export const headerLook = (): Look => HEADER;
