/** Where the throws of one disc at one power may end. */
import { ACROSS_POINTS, ALONG_POINTS } from "../constants";
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

/** Level, calm carries that are out of trouble. */
export interface SafeCarries {
  readonly fromM: number;
  readonly toM: number;
}

const ANYWHERE: SafeCarries = { fromM: 0, toM: Infinity };
const alongMemory = remember<SpreadRule>(200);
const acrossMemory = remember<SpreadRule>(200);

/**
 * The landings of a disc at `power`. The carry weights sum to the share of throws that ends within
 * `safe`, which is 1 unless some carry is not safe. The bias is aimed off, so the sideways spread
 * stands around the line to the target.
 */
export function landing(row: CardRow, power: number, safe = ANYWHERE): Landing {
  const { centre, scale } = powerSpread(row, power);
  const along = alongRule(
    row.freedom,
    safe.fromM > 0 ? (Math.log(safe.fromM) - centre) / scale : -Infinity,
    safe.toM > 0 ? (Math.log(safe.toM) - centre) / scale : -Infinity,
  );
  const across = acrossRule(row.side.freedom);
  return {
    carriesM: along.scales.map((scales) => Math.exp(centre + scale * scales)),
    carryWeights: along.weights,
    sideSlopes: across.scales.map((scales) => sideSlope(row.side.scaleRad * scales)),
    sideWeights: across.weights,
  };
}

function alongRule(freedom: number, from: number, to: number): SpreadRule {
  const make = (): SpreadRule => spreadRule(freedom, ALONG_POINTS, from, to);
  return from === -Infinity && to === Infinity ? alongMemory(`${freedom}`, make) : make();
}

/** The right half of the spread stands for both. */
const acrossRule = (freedom: number): SpreadRule =>
  acrossMemory(`${freedom}`, () => {
    const { scales, weights } = spreadRule(freedom, ACROSS_POINTS, 0, Infinity);
    return { scales, weights: weights.map((weight) => 2 * weight) };
  });

/** A throw is taken to go no more than 60° off the line, where its tangent still means something. */
const WIDEST_RAD = Math.PI / 3;
const sideSlope = (angleRad: number): number => Math.tan(Math.min(angleRad, WIDEST_RAD));
