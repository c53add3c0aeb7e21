/** How each role of the blueprint looks in Excel. */
import type { Style } from "../blueprint/types";

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
