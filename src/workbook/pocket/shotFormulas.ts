/** From the three inputs to plays-like distances: a cubic in each direction through the frozen grid. */
import { DISC_TYPES } from "../../core/types";
import type { DistanceUnit } from "../../core/units";
import {
  type Block,
  COLUMN,
  fixed,
  fixedArea,
  formula,
  frozen,
  INPUTS,
  ROW,
  TOP,
  tracked,
} from "./cells";
import { type Axis, axisEnd, type Grid, OUT_OF_REACH, usualDistance } from "./grid";

/** A cubic runs through four neighbours. */
export const NEIGHBOURS = 4;

/** Where an input stands on the axis of a frozen grid. */
export interface OnAxis {
  /** The input, kept within the axis; blank counts as 0. */
  readonly value: string;
  /** Figures of the axis before the first of the four neighbours. */
  readonly first: string;
  /** Figures of the axis before the nearest one below. */
  readonly below: string;
  readonly weights: readonly string[];
  readonly blocks: readonly Block[];
}

/** Lagrange's weights of the four neighbours at 0, 1, 2 and 3 for a place `u` among them. */
const lagrange = (u: string): string[] => [
  `-(${u}-1)*(${u}-2)*(${u}-3)/6`,
  `${u}*(${u}-2)*(${u}-3)/2`,
  `-${u}*(${u}-1)*(${u}-3)/2`,
  `${u}*(${u}-1)*(${u}-2)/6`,
];

/** Three figures from `row` on, and four weights in a column of their own. */
export function onAxis(input: string, axis: Axis, row: number, weightColumn: number): OnAxis {
  const [value, first, place] = [row, row + 1, row + 2].map((at) => fixed(COLUMN.figures, at)) as [
    string,
    string,
    string,
  ];
  const steps = axis.growing
    ? `LN(${value}/${axis.from})/LN(${axis.step})`
    : `(${value}-(${axis.from}))/${axis.step}`;
  const blank = Math.max(axis.from, 0);
  return {
    value,
    first,
    below: `(${first}+MIN(${NEIGHBOURS - 2},INT(${place})))`,
    weights: lagrange(place).map((_, index) => fixed(weightColumn, TOP + index)),
    blocks: [
      formula(
        COLUMN.figures,
        row,
        `IF(ISNUMBER(${input}),MAX(${axis.from},MIN(${axisEnd(axis)},${input})),${blank})`,
      ),
      formula(COLUMN.figures, row + 1, `MAX(0,MIN(${axis.count - NEIGHBOURS},INT(${steps})-1))`),
      formula(COLUMN.figures, row + 2, `${steps}-${first}`),
      ...lagrange(place).map((weight, index) => formula(weightColumn, TOP + index, weight)),
    ],
  };
}

/** Figures next to a place: two in each direction. */
const CORNERS = 8;
const TYPED_FORMULAS_WEIGHTS_TOP = TOP + NEIGHBOURS + 1;

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

/** The square of the doubt of plays-like of one type, by a cubic each way; never below 0. */
function varianceFormula(type: number, grid: Grid, place: Place, weights: string): Block[] {
  const left = COLUMN.doubts + type * (grid.rises.count + 1);
  const { block, ref } = frozen(left, TOP, grid.variances[type]!);
  const four = [place.distance.first, place.rise.first, place.wind.first];
  const sums = place.wind.weights.map(
    (weight, slice) =>
      `${weight}*SUMPRODUCT(${about(ref, grid, four, slice, NEIGHBOURS)},${weights})`,
  );
  const text = `${tracked(PLACE_FIGURES)}+MAX(0,${sums.join("+")})`;
  return [block, formula(COLUMN.variance, TOP + type, text)];
}

/** The same for every disc type, one row each. */
export function allTypes(grid: Grid, place: Place): Block[] {
  const weights = crossed(place.distance, place.rise, TYPED_FORMULAS_WEIGHTS_TOP);
  return [
    ...weights.blocks,
    ...grid.tables.flatMap((_, type) => typedFormulas(type, grid, place, weights.ref)),
    ...grid.variances.flatMap((_, type) => varianceFormula(type, grid, place, weights.ref)),
  ];
}

export const typeCells = (column: number, types: number): string =>
  fixedArea(column, TOP, 1, types);
export const typeCell = (column: number, type: number): string => fixed(column, TOP + type);

const WEIGHTS_TOP = TOP + 2 * (NEIGHBOURS + 1);

/**
 * Plays-like distance where the type is not known, in the row under the last type: between those of
 * the two types usual at the distance, and off that line by a parabola through the frozen bend
 * half-way.
 */
export function blendFormulas(grid: Grid, place: Place, unit: DistanceUnit): Block[] {
  const distance = place.distance.value;
  const count = DISC_TYPES.length;
  const usual = DISC_TYPES.map((type) => usualDistance(type, unit));
  const anchors = frozen(
    COLUMN.anchors,
    TOP,
    usual.map((figure) => [figure]),
  );
  const nearer = fixed(COLUMN.figures, ROW.nearer);
  const share = fixed(COLUMN.figures, ROW.share);
  const pair = (ref: string): readonly [string, string] => [
    `INDEX(${ref},${nearer})`,
    `INDEX(${ref},${nearer}+1)`,
  ];
  const [from, to] = pair(anchors.ref);
  const [low, high] = pair(typeCells(COLUMN.plays, count));
  const [lowSure, highSure] = pair(typeCells(COLUMN.sure, count));
  const bends = frozen(COLUMN.bends, TOP, grid.bends);
  const weights = crossed(place.wind, place.rise, WEIGHTS_TOP);
  const corner = (more: number): string =>
    `INDEX(${bends.ref},(${nearer}-1)*${grid.winds.count}+${place.wind.first}+${more},${place.rise.first}+${more})`;
  const bend = `4*${share}*(1-${share})*SUMPRODUCT(${corner(1)}:${corner(NEIGHBOURS)},${weights.ref})`;
  const line = `(1-${share})*${low}+${share}*${high}`;
  return [
    anchors.block,
    bends.block,
    ...weights.blocks,
    formula(
      COLUMN.figures,
      ROW.nearer,
      `IF(${distance}<${usual[0]},1,MIN(${count - 1},MATCH(${distance},${anchors.ref},1)))`,
    ),
    formula(
      COLUMN.figures,
      ROW.share,
      `${tracked(nearer)}+MAX(0,MIN(1,(${distance}-${from})/(${to}-${from})))`,
    ),
    formula(
      COLUMN.plays,
      TOP + count,
      `IF(${tracked(nearer)}+${tracked(PLACE_FIGURES)}+COUNT(${low},${high})=2,${line}+${bend},"${OUT_OF_REACH}")`,
    ),
    formula(COLUMN.sure, TOP + count, `${tracked(nearer)}+MIN(${lowSure},${highSure})`),
  ];
}

export interface ShotCells {
  readonly blocks: readonly Block[];
  readonly distance: string;
  /** 1 where the inputs are numbers that the sheet knows, 0 beyond them, −1 where one is no number. */
  readonly known: string;
  /** Plays-like distance of each type, and last where the type is not known. */
  readonly plays: string;
  /** The square of the doubt of each, in the same order. */
  readonly variances: string;
  readonly untyped: string;
  /** 1 where no figure next to the place of the untyped distance lies beyond reach. */
  readonly sure: string;
}

function isKnown({ distance, rise, wind }: Place): Block {
  const notNumber = (input: string): string => `AND(${input}<>"",NOT(ISNUMBER(${input})))`;
  const noNumber = `OR(NOT(ISNUMBER(${INPUTS.distance})),${notNumber(INPUTS.rise)},${notNumber(INPUTS.wind)})`;
  const within = `AND(${INPUTS.distance}=${distance.value},N(${INPUTS.rise})=${rise.value},N(${INPUTS.wind})=${wind.value})`;
  return formula(COLUMN.figures, ROW.known, `IF(${noNumber},-1,IF(${within},1,0))`);
}

/** Inputs as the sheet takes them, and the plays-like distance of each disc type. */
export function shotCells(grid: Grid, unit: DistanceUnit): ShotCells {
  const place: Place = {
    distance: onAxis(INPUTS.distance, grid.distances, ROW.distance, COLUMN.weights),
    rise: onAxis(INPUTS.rise, grid.rises, ROW.rise, COLUMN.weights + 1),
    wind: onAxis(INPUTS.wind, grid.winds, ROW.wind, COLUMN.weights + 2),
  };
  const types = DISC_TYPES.length;
  return {
    distance: place.distance.value,
    known: fixed(COLUMN.figures, ROW.known),
    plays: typeCells(COLUMN.plays, types + 1),
    variances: typeCells(COLUMN.variance, types + 1),
    untyped: typeCell(COLUMN.plays, types),
    sure: typeCell(COLUMN.sure, types),
    blocks: [
      isKnown(place),
      ...Object.values(place).flatMap(({ blocks }: Place["distance"]) => blocks),
      ...allTypes(grid, place),
      ...blendFormulas(grid, place, unit),
    ],
  };
}
