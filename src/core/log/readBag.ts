/** The bag: which discs there are, of what type, and which go along. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { BagDisc, Cell, Cells } from "../types";
import { cellAt, isBlank, numberIn, plainCell, textIn, wrongCell } from "./cell";
import { discKey, discType } from "./names";
import { type Column, findColumns } from "./headings";

const BAG_HEADERS = {
  disc: ["disc", "disc name", "discs"],
  type: ["type"],
  line: ["line"],
  softest: ["softest"],
  inBag: ["in bag", "in the bag"],
} as const;

/** Words in the column In bag that leave a disc at home; anything else takes it along. */
const STAYS_HOME: ReadonlySet<string> = new Set(["no", "n", "out", "home", "false"]);

/**
 * Reads the bag table: columns by header in any order; only Disc must be there. A type that is not
 * one of the four is not known (null). Softest is a share of smooth; one that is no number, or not from
 * 0.05 to 1, throws an `unusable` error that names the row, and a blank or 0 is not known. Rows without a name are passed over, and of two rows of one
 * disc the first counts. A blank range is an empty bag; no Disc column throws an `unusable` error.
 *
 * @example
 * readBag([["Disc", "In bag"], ["Copper mid", "no"]])[0]?.inBag // false
 */
export function readBag(cells: Cells): BagDisc[] {
  if (!cells.some((row) => row.some((cell) => !isBlank(plainCell(cell))))) return [];
  const columns = findColumns(cells[0]!, BAG_HEADERS);
  if (!columns.disc) throw unusable(messages.log.noColumn("Disc", "The bag"));
  const bag = new Map<string, BagDisc>();
  for (let index = 1; index < cells.length; index++) {
    const text = (column?: { readonly index: number }): string =>
      textIn(cellAt(cells[index]!, column?.index ?? -1));
    const disc = text(columns.disc).replace(/\s+/g, " ");
    const key = discKey(disc);
    if (disc === "" || bag.has(key)) continue;
    bag.set(key, {
      row: index + 1,
      disc,
      type: discType(text(columns.type)),
      line: text(columns.line),
      softest: softestIn(cells[index]!, columns.softest, index + 1),
      inBag: !STAYS_HOME.has(discKey(text(columns.inBag))),
    });
  }
  return [...bag.values()];
}

const LEAST_SOFTEST = 0.05;

function softestIn(cells: readonly Cell[], column: Column | undefined, row: number): number | null {
  const cell = cellAt(cells, column?.index ?? -1);
  const softest = numberIn(cell, 0);
  if (softest === 0) return null;
  if (Number.isNaN(softest)) throw unusable(wrongCell(row, "softest", cell));
  if (softest < LEAST_SOFTEST || softest > 1) throw unusable(messages.log.badPower(row, softest));
  return softest;
}
