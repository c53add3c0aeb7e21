import type { Cells } from "../types";

/**
 * Whether the host sends blank cells as the number 0, as some do: then a 0 stands where only text
 * belongs. There, a figure of 0 that could also be a blank must be taken as one. `textColumns` are
 * indexes; −1 is none.
 */
export function blanksAreZero(cells: Cells, textColumns: readonly number[]): boolean {
  const columns = textColumns.filter((column) => column >= 0);
  for (const row of cells) {
    for (const column of columns) if (row[column] === 0) return true;
  }
  return false;
}
