import { fixed, formula, type Block } from "./cells";
import { axisEnd, type Axis } from "./grid";
import { COLUMN, TOP } from "./layout";

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
