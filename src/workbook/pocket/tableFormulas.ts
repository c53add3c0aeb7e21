/** Frozen tables of what each disc costs and at which power, and the values between their figures. */
import { fixed, fixedArea, frozen, tracked, type Block } from "./cells";
import { COLUMN, TOP } from "./layout";
import type { PickTable } from "./picks";

/**
 * Values between the rows of one disc's column of a frozen table: linear in plays-like distance and
 * stretch. The column alone, as programs read all of what a formula names.
 */
export function between(column: string, row: number, rows: number): string {
  const cell = (column: number): string => fixed(column, row);
  const at = (stretch: number, place: number): string =>
    `INDEX(${column},(${cell(COLUMN.stretch)}+${stretch - 1})*${rows}+${cell(COLUMN.place)}+${place})`;
  const along = (stretch: number): string =>
    `((1-${cell(COLUMN.placeShare)})*${at(stretch, 0)}+${cell(COLUMN.placeShare)}*${at(stretch, 1)})`;
  const share = cell(COLUMN.stretchShare);
  return `${tracked(cell(COLUMN.place))}+${tracked(cell(COLUMN.stretch))}+(1-${share})*${along(0)}+${share}*${along(1)}`;
}

/** Where a value stands among ascending nodes: the number of the one below, and the share of the way on. */
export function placed(
  value: string,
  nodes: string,
  count: number,
  first: number,
  place: string,
): { place: string; share: string } {
  const node = (offset: number): string => `INDEX(${nodes},${place}+${offset})`;
  return {
    place: `IF(${value}<${first},1,MIN(${count - 1},MATCH(${value},${nodes},1)))`,
    share: `${tracked(place)}+MAX(0,MIN(1,(${value}-${node(0)})/(${node(1)}-${node(0)})))`,
  };
}

interface StoredTable {
  readonly block: Block;
  /** The column of each disc. */
  readonly columns: readonly string[];
}

/** A table numbered `index` where it stands behind the sheet. */
export function storedTable(
  { costs, powers }: PickTable,
  index: number,
  discs: number,
): { costs: StoredTable; powers: StoredTable } {
  const width = discs + 1;
  const stored = (values: PickTable["costs"], left: number): StoredTable => ({
    block: frozen(left, TOP, values).block,
    columns: values[0]!.map((_, disc) => fixedArea(left + disc, TOP, 1, values.length)),
  });
  const left = COLUMN.tables + 2 * index * width;
  return { costs: stored(costs, left), powers: stored(powers, left + width) };
}
