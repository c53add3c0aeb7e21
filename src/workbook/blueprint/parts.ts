/** Small building blocks that the sheets share. */
import { type Area, readSpot } from "../a1";
import type { CellValue } from "../port";
import type { CellsPlan, ListRule, NumberFormat, SheetPlan, Style, TablePlan } from "./types";

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

type Block = SheetPlan["blocks"][number];

/** Body rows that a table starts with. */
export const bodyRows = (plan: TablePlan): number => Math.max(plan.rows.length, plan.least ?? 0, 1);

function area(at: string, rows: number, columns: number): Area {
  const spot = readSpot(at);
  if (!spot) throw new RangeError(`The blueprint names no cell: ${at}`);
  const { row, column } = spot;
  return { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 };
}

/** Cells that a block fills or keeps free. */
export function blockArea(block: Block): Area {
  if (block.kind === "table") return area(block.at, bodyRows(block) + 1, block.columns.length);
  if (block.kind === "formula")
    return area(block.at, block.spill?.rows ?? 1, block.spill?.columns ?? 1);
  return area(block.at, block.values.length, Math.max(...block.values.map((row) => row.length)));
}
