/** Where the throws of one disc at one power may end. */
import { LONGEST_HOLE_M } from "../constants";
import { remember } from "../memory";
import { powerSpread, type ThrowForm } from "./courseForm";
import { spreadRule, type SpreadRule } from "./quadrature";
import type { Target } from "./target";

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

const alongMemory = remember<SpreadRule>(400);
const acrossMemory = remember<SpreadRule>(400);

/**
 * The landings of a disc at `power`, towards a distance in `doubt` (see `powerSpread`). The bias is aimed
 * off, so the sideways spread stands around the line to the target.
 */
export function landing(form: ThrowForm, power: number, fineness: Fineness, doubt = 0): Landing {
  const { centre, scale } = powerSpread(form, power, doubt);
  const along = alongMemory(`${form.freedom} ${fineness.along}`, () =>
    spreadRule(form.freedom, fineness.along, -Infinity, Infinity),
  );
  const across = acrossMemory(`${form.side.freedom} ${fineness.across}`, () =>
    rightHalf(form.side.freedom, fineness.across),
  );
  return {
    carriesM: along.scales.map((scalesOff) => Math.exp(centre + scale * scalesOff)),
    carryWeights: along.weights,
    sideSlopes: across.scales.map((scalesOff) => sideSlope(form.side.scaleRad * scalesOff)),
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
export const sideSlope = (angleRad: number): number =>
  Math.tan(Math.max(-WIDEST_RAD, Math.min(angleRad, WIDEST_RAD)));

/** How far beyond the target along the line a throw of this level, calm carry ends, m; short negative. */
export const missM = (carryM: number, { distanceM, playsLikeM }: Target): number =>
  ((carryM - playsLikeM) * distanceM) / playsLikeM;

// Means over where a throw may end.

/** What a table of every whole metre says of a distance: linear between its entries, the last one beyond. */
export function valueAt(table: Float64Array, leftM: number): number {
  const metre = leftM | 0;
  return metre < table.length - 1
    ? table[metre]! + (leftM - metre) * (table[metre + 1]! - table[metre]!)
    : table[table.length - 1]!;
}

/**
 * The mean, over the landings, of what `table` says of the distance left. A throw of level carry L misses
 * along the line by (L − D*)·D/D*, and sideways by the distance times its side slope.
 */
export function meanOver(
  { carriesM, carryWeights, sideSlopes, sideWeights }: Landing,
  { distanceM, playsLikeM }: Target,
  table: Float64Array,
): number {
  const stretch = distanceM / playsLikeM;
  let mean = 0;
  for (let i = 0; i < carriesM.length; i++) {
    const alongM = (carriesM[i]! - playsLikeM) * stretch;
    let inner = 0;
    for (let j = 0; j < sideSlopes.length; j++) {
      const sideM = distanceM * sideSlopes[j]!;
      const leftM = Math.sqrt(alongM * alongM + sideM * sideM);
      inner += sideWeights[j]! * valueAt(table, leftM);
    }
    mean += carryWeights[i]! * inner;
  }
  return mean;
}

// How far from the target a throw leaves the disc.

/** A table whose value at a distance is that distance. */
const DISTANCES = Float64Array.from({ length: 2 * LONGEST_HOLE_M + 1 }, (_, metre) => metre);

/**
 * Mean distance from the target after a throw, m, over all but the wildest thousandth of throws on
 * each side, along and across; distances beyond 1000 m count as 1000. Good to 0.01 m.
 */
export const leavesM = (landing: Landing, target: Target): number =>
  meanOver(landing, target, DISTANCES);

/** Median finish of a disc at a power beyond the target, along the line, m; short negative. */
export const finishM = ({ mu }: Pick<ThrowForm, "mu">, power: number, target: Target): number =>
  missM(power * Math.exp(mu), target);
