/** From the three inputs to plays-like distances: a cubic in each direction through the frozen grid. */
import { DISC_TYPES } from "../../core/types";
import { fixed, fixedArea, formula, frozen, tracked, type Block } from "./cells";
import { axisEnd, OUT_OF_REACH, withoutHoles, type Axis, type Grid } from "./grid";

/** The three inputs, top to bottom. */
export const INPUTS = { distance: "$B$5", rise: "$B$6", wind: "$B$7" } as const;

/** A cubic runs through four neighbours. */
const NEIGHBOURS = 4;
/** Figures next to a place: two in each direction. */
const CORNERS = 8;
const COLUMN = {
  figures: 6,
  below: 7,
  weights: 8,
  sure: 12,
  plays: 13,
  anchors: 14,
  grids: 28,
} as const;
const GRID_TOP = 2;

/** Lagrange's weights of the four neighbours at 0, 1, 2 and 3 for a place `u` among them. */
const lagrange = (u: string): string[] => [
  `-(${u}-1)*(${u}-2)*(${u}-3)/6`,
  `${u}*(${u}-2)*(${u}-3)/2`,
  `-${u}*(${u}-1)*(${u}-3)/2`,
  `${u}*(${u}-1)*(${u}-2)/6`,
];

interface Direction {
  /** The input, kept within the axis; blank counts as 0. */
  readonly value: string;
  /** Neighbours before the first of the four. */
  readonly first: string;
  /** Neighbours before the nearest one below. */
  readonly below: string;
  readonly weights: readonly string[];
  readonly blocks: readonly Block[];
}

function direction(row: number, weightColumn: number, input: string, axis: Axis): Direction {
  const value = fixed(COLUMN.figures, row);
  const first = fixed(COLUMN.figures, row + 1);
  const place = fixed(COLUMN.figures, row + 2);
  const below = `(${first}+MIN(${NEIGHBOURS - 2},INT(${place})))`;
  const steps = axis.growing
    ? `LN(${value}/${axis.from})/LN(${axis.step})`
    : `(${value}-(${axis.from}))/${axis.step}`;
  const most = axis.count - NEIGHBOURS;
  const weights = lagrange(place).map((weight, index) =>
    formula(weightColumn, GRID_TOP + index, weight),
  );
  return {
    value,
    first,
    below,
    weights: weights.map((_, index) => fixed(weightColumn, GRID_TOP + index)),
    blocks: [
      formula(
        COLUMN.figures,
        row,
        `IF(ISNUMBER(${input}),MAX(${axis.from},MIN(${axisEnd(axis)},${input})),${Math.max(axis.from, 0)})`,
      ),
      formula(COLUMN.figures, row + 1, `MAX(0,MIN(${most},INT(${steps})-1))`),
      formula(COLUMN.figures, row + 2, `${steps}-${first}`),
      ...weights,
    ],
  };
}

export interface ShotCells {
  readonly blocks: readonly Block[];
  readonly distance: string;
  /** 1 where the inputs are numbers that the sheet knows, 0 beyond them, −1 where one is no number. */
  readonly known: string;
  /** Plays-like distance of each type, and last where the type is not known. */
  readonly plays: string;
  readonly untyped: string;
  /** 1 where no figure that the untyped distance rests on lies beyond reach. */
  readonly sure: string;
}

/** Inputs as the sheet takes them, and the plays-like distance of each disc type. */
export function shotCells(grid: Grid, anchors: readonly number[]): ShotCells {
  const { distances, rises, winds } = grid;
  const distance = direction(3, COLUMN.weights, INPUTS.distance, distances);
  const rise = direction(6, COLUMN.weights + 1, INPUTS.rise, rises);
  const wind = direction(9, COLUMN.weights + 2, INPUTS.wind, winds);

  const known = fixed(COLUMN.figures, 2);
  const notNumber = (input: string): string => `AND(${input}<>"",NOT(ISNUMBER(${input})))`;
  const isKnown = formula(
    COLUMN.figures,
    2,
    `IF(OR(NOT(ISNUMBER(${INPUTS.distance})),${notNumber(INPUTS.rise)},${notNumber(INPUTS.wind)}),-1,` +
      `IF(AND(${INPUTS.distance}=${distance.value},N(${INPUTS.rise})=${rise.value},N(${INPUTS.wind})=${wind.value}),1,0))`,
  );

  const weightTop = GRID_TOP + NEIGHBOURS + 1;
  const crossed = distance.weights.flatMap((along, row) =>
    rise.weights.map((up, column) =>
      formula(COLUMN.weights + column, weightTop + row, `${along}*${up}`),
    ),
  );
  const weights = fixedArea(COLUMN.weights, weightTop, NEIGHBOURS, NEIGHBOURS);

  const width = rises.count + 1;
  const tables = grid.tables.map((table, index) => {
    const left = COLUMN.grids + 2 * index * width;
    return {
      raw: frozen(left, GRID_TOP, table),
      filled: frozen(left + width, GRID_TOP, withoutHoles(table, grid)),
    };
  });
  /** Figures of one wind, `slice` after a first one, about a distance and a rise. */
  const about = (
    ref: string,
    { firsts, slice, size }: { firsts: readonly string[]; slice: number; size: number },
  ): string => {
    const corner = (more: number): string =>
      `INDEX(${ref},(${firsts[2]}+${slice})*${distances.count}+${firsts[0]}+${1 + more},${firsts[1]}+${1 + more})`;
    return `${corner(0)}:${corner(size - 1)}`;
  };
  const four = [distance.first, rise.first, wind.first];
  const nearest = [distance.below, rise.below, wind.below];
  const sure: Block[] = [];
  const typed = tables.map(({ raw, filled }, index) => {
    const reached = [0, 1].map(
      (slice) => `SUMPRODUCT(1*ISNUMBER(${about(raw.ref, { firsts: nearest, slice, size: 2 })}))`,
    );
    const sums = wind.weights.map(
      (weight, slice) =>
        `${weight}*SUMPRODUCT(${about(filled.ref, { firsts: four, slice, size: NEIGHBOURS })},${weights})`,
    );
    const reach = `${tracked(fixedArea(COLUMN.figures, 3, 1, 9))}+${reached.join("+")}`;
    sure.push(formula(COLUMN.sure, GRID_TOP + index, `IF(${reach}=${CORNERS},1,0)`));
    return formula(
      COLUMN.plays,
      GRID_TOP + index,
      `IF(${reach}=0,"${OUT_OF_REACH}",MAX(1,${sums.join("+")}))`,
    );
  });

  const count = DISC_TYPES.length;
  const anchorCells = frozen(
    COLUMN.anchors,
    GRID_TOP,
    anchors.map((anchor) => [anchor]),
  );
  const plays = (rows: number): string => fixedArea(COLUMN.plays, GRID_TOP, 1, rows);
  const [nearer, share] = [fixed(COLUMN.figures, 12), fixed(COLUMN.figures, 13)];
  const anchor = (offset: number): string => `INDEX(${anchorCells.ref},${nearer}+${offset})`;
  const blend = (offset: number): string => `INDEX(${plays(count)},${nearer}+${offset})`;
  const isSure = (offset: number): string =>
    `INDEX(${fixedArea(COLUMN.sure, GRID_TOP, 1, count)},${nearer}+${offset})`;
  const sureUntyped = fixed(COLUMN.sure, GRID_TOP + count);
  const untyped = fixed(COLUMN.plays, GRID_TOP + count);
  return {
    distance: distance.value,
    known,
    plays: plays(count + 1),
    untyped,
    sure: sureUntyped,
    blocks: [
      isKnown,
      ...distance.blocks,
      ...rise.blocks,
      ...wind.blocks,
      ...crossed,
      ...tables.flatMap(({ raw, filled }) => [raw.block, filled.block]),
      ...typed,
      ...sure,
      anchorCells.block,
      formula(
        COLUMN.figures,
        12,
        `IF(${distance.value}<${anchors[0]},1,MIN(${count - 1},MATCH(${distance.value},${anchorCells.ref},1)))`,
      ),
      formula(
        COLUMN.figures,
        13,
        `${tracked(nearer)}+MAX(0,MIN(1,(${distance.value}-${anchor(0)})/(${anchor(1)}-${anchor(0)})))`,
      ),
      formula(
        COLUMN.plays,
        GRID_TOP + count,
        `IF(${tracked(nearer)}+COUNT(${blend(0)},${blend(1)})=2,(1-${share})*${blend(0)}+${share}*${blend(1)},"${OUT_OF_REACH}")`,
      ),
      formula(COLUMN.sure, GRID_TOP + count, `${tracked(nearer)}+MIN(${isSure(0)},${isSure(1)})`),
    ],
  };
}
