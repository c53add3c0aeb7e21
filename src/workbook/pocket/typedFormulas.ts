import { NEIGHBOURS, type OnAxis } from "./axisFormulas";
import { fixed, fixedArea, formula, frozen, tracked, type Block } from "./cells";
import { OUT_OF_REACH, type Grid } from "./grid";
import { COLUMN, ROW, TOP } from "./layout";

/** Figures next to a place: two in each direction. */
const CORNERS = 8;
const WEIGHTS_TOP = TOP + NEIGHBOURS + 1;

/** All that says where the inputs stand on their axes. */
export const PLACE_FIGURES = fixedArea(COLUMN.figures, ROW.distance, 1, ROW.nearer - ROW.distance);

/** Where the three inputs stand on their axes. */
export interface Place {
  readonly distance: OnAxis;
  readonly rise: OnAxis;
  readonly wind: OnAxis;
}

/** Products of the weights of two directions, row by column; where they stand. */
export function crossed(
  rows: OnAxis,
  columns: OnAxis,
  top: number,
): { ref: string; blocks: Block[] } {
  return {
    ref: fixedArea(COLUMN.weights, top, NEIGHBOURS, NEIGHBOURS),
    blocks: rows.weights.flatMap((one, row) =>
      columns.weights.map((other, column) =>
        formula(COLUMN.weights + column, top + row, `${one}*${other}`),
      ),
    ),
  };
}

/** Figures of a frozen grid about the place, for the wind numbered `slice` from `wind` on. */
function about(
  ref: string,
  grid: Grid,
  [distance, rise, wind]: readonly string[],
  slice: number,
  size: number,
): string {
  const corner = (more: number): string =>
    `INDEX(${ref},(${wind}+${slice})*${grid.distances.count}+${distance}+${more},${rise}+${more})`;
  return `${corner(1)}:${corner(size)}`;
}

/** Plays-like distance of one type by a cubic each way, and whether all next to the place is in reach. */
function typedFormulas(
  type: number,
  grid: Grid,
  { distance, rise, wind }: Place,
  weights: string,
): Block[] {
  const width = grid.rises.count + 1;
  const left = COLUMN.grids + 2 * type * width;
  const raw = frozen(left, TOP, grid.tables[type]!);
  const filled = frozen(left + width, TOP, grid.filled[type]!);
  const nearest = [distance.below, rise.below, wind.below];
  const four = [distance.first, rise.first, wind.first];
  const counts = [0, 1].map(
    (slice) => `SUMPRODUCT(1*ISNUMBER(${about(raw.ref, grid, nearest, slice, 2)}))`,
  );
  const reach = `${tracked(PLACE_FIGURES)}+${counts.join("+")}`;
  const sums = wind.weights.map(
    (weight, slice) =>
      `${weight}*SUMPRODUCT(${about(filled.ref, grid, four, slice, NEIGHBOURS)},${weights})`,
  );
  return [
    raw.block,
    filled.block,
    formula(COLUMN.plays, TOP + type, `IF(${reach}=0,"${OUT_OF_REACH}",MAX(1,${sums.join("+")}))`),
    formula(COLUMN.sure, TOP + type, `IF(${reach}=${CORNERS},1,0)`),
  ];
}

/** The same for every disc type, one row each. */
export function allTypes(grid: Grid, place: Place): Block[] {
  const weights = crossed(place.distance, place.rise, WEIGHTS_TOP);
  return [
    ...weights.blocks,
    ...grid.tables.flatMap((_, type) => typedFormulas(type, grid, place, weights.ref)),
  ];
}

export const typeCells = (column: number, types: number): string =>
  fixedArea(column, TOP, 1, types);
export const typeCell = (column: number, type: number): string => fixed(column, TOP + type);
