/** Where the throws of one disc at one power may end. */
import { remember } from "../memory";
import type { CardRow } from "../types";
import { powerSpread } from "./powerSpread";
import { spreadRule, type SpreadRule } from "./spreadRule";

/**
 * Every pair of a carry and a side slope is one way to end, with the product of their weights as its
 * share. Level, calm carries in m; slopes are sideways m for each m to the target, on one side only
 * since the distance left does not tell left from right.
 */
export interface Landing {
  readonly carriesM: Float64Array;
  readonly carryWeights: Float64Array;
  readonly sideSlopes: Float64Array;
  readonly sideWeights: Float64Array;
}

/** How many points a landing has along and across. */
export interface Fineness {
  readonly along: number;
  readonly across: number;
}

/** Means good to 0.002 strokes. */
export const FINE: Fineness = { along: 32, across: 8 };

/** Means good to 0.05 strokes, at a tenth of the work: to tell which discs are worth a closer look. */
export const COARSE: Fineness = { along: 9, across: 3 };

/** Level, calm carries that are out of trouble. */
export interface SafeCarries {
  readonly fromM: number;
  readonly toM: number;
}

const ANYWHERE: SafeCarries = { fromM: 0, toM: Infinity };
const alongMemory = remember<SpreadRule>(400);
const acrossMemory = remember<SpreadRule>(400);

/**
 * The landings of a disc at `power`. The carry weights sum to the share of throws that ends within
 * `safe`, which is 1 unless some carry is not safe. The bias is aimed off, so the sideways spread
 * stands around the line to the target.
 */
export function landing(row: CardRow, power: number, fineness: Fineness, safe = ANYWHERE): Landing {
  const { centre, scale } = powerSpread(row, power);
  const scales = (carryM: number): number => (Math.log(carryM) - centre) / scale;
  const along =
    safe === ANYWHERE
      ? alongMemory(`${row.freedom} ${fineness.along}`, () =>
          spreadRule(row.freedom, fineness.along, -Infinity, Infinity),
        )
      : spreadRule(row.freedom, fineness.along, scales(safe.fromM), scales(safe.toM));
  const across = acrossMemory(`${row.side.freedom} ${fineness.across}`, () =>
    rightHalf(row.side.freedom, fineness.across),
  );
  return {
    carriesM: along.scales.map((scalesOff) => Math.exp(centre + scale * scalesOff)),
    carryWeights: along.weights,
    sideSlopes: across.scales.map((scalesOff) => sideSlope(row.side.scaleRad * scalesOff)),
    sideWeights: across.weights,
  };
}

/** The right half of the spread, standing for both. */
function rightHalf(freedom: number, count: number): SpreadRule {
  const { scales, weights } = spreadRule(freedom, count, 0, Infinity);
  return { scales, weights: weights.map((weight) => 2 * weight) };
}

/** A throw is taken to go no more than 60° off the line, where its tangent still means something. */
const WIDEST_RAD = Math.PI / 3;
const sideSlope = (angleRad: number): number => Math.tan(Math.min(angleRad, WIDEST_RAD));
