/** Trouble around the target, and where a throw ends that meets it. */
import { FRONT_TROUBLE_DEPTH_M, INSIDE_EDGE_M } from "../constants";
import type { Hole } from "../types";
import { powerSpread, type ThrowForm } from "./courseForm";
import { type Landing, missM, sideSlope, valueAt } from "./landing";
import { spreadRule, type SpreadRule } from "./quadrature";
import { doubtOf, type Target } from "./target";

/** From the target to trouble behind and in front of it, from the line to trouble at its sides, m. */
export type Trouble = Partial<
  Pick<Hole, "longTroubleM" | "shortTroubleM" | "leftTroubleM" | "rightTroubleM">
>;

export const hasTrouble = (trouble: Trouble): boolean =>
  !!(trouble.longTroubleM || trouble.shortTroubleM) || hasSideTrouble(trouble);

export const hasSideTrouble = ({ leftTroubleM, rightTroubleM }: Trouble): boolean =>
  !!(leftTroubleM || rightTroubleM);

/** Where the edges of trouble stand about the target: along the line and across it, m; infinitely far where there is none. */
export interface Edges {
  readonly behindM: number;
  /** Negative: from here on to the target is the ground in front of it. */
  readonly frontM: number;
  readonly leftM: number;
  readonly rightM: number;
}

export const edgesOf = (trouble: Trouble): Edges => ({
  behindM: trouble.longTroubleM || Infinity,
  frontM: -(trouble.shortTroubleM || Infinity),
  leftM: -(trouble.leftTroubleM || Infinity),
  rightM: trouble.rightTroubleM || Infinity,
});

/** Which way is away from trouble at one side, or from the nearer of two: 1 right, −1 left, 0 neither. */
export function awayFrom(trouble: Trouble): -1 | 0 | 1 {
  const { leftM, rightM } = edgesOf(trouble);
  return rightM < -leftM ? -1 : rightM > -leftM ? 1 : 0;
}

/**
 * The ways in which a throw may end: how far from the target the next one is made, with the share of
 * throws. The first `safe` of them cost this throw alone, the others a penalty throw too.
 */
export interface Ends {
  readonly leftM: readonly number[];
  readonly shares: readonly number[];
  readonly safe: number;
  /** Share of throws that ends in trouble in front: the next one is made from the same spot, with a penalty. */
  readonly again: number;
}

/** The ends of a throw that meets no trouble. */
export function plainEnds(
  { carriesM, carryWeights, sideSlopes, sideWeights }: Landing,
  target: Target,
): Ends {
  const leftM: number[] = [];
  const shares: number[] = [];
  carriesM.forEach((carryM, i) => {
    const alongM = missM(carryM, target);
    sideSlopes.forEach((slope, j) => {
      leftM.push(Math.hypot(alongM, slope * target.distanceM));
      shares.push(carryWeights[i]! * sideWeights[j]!);
    });
  });
  return { leftM, shares, safe: leftM.length, again: 0 };
}

/** Points along and across the ground that is not trouble, and over each stretch beyond an edge. */
const ALONG = 24;
const ACROSS = 12;
const BEYOND = 12;

/**
 * The ends of a disc thrown at `power` with its line `aimM` right of the target. PDGA Official Rules of
 * Disc Golf, 806.02: one penalty throw, and the next lie is, behind and at the sides, 1 m inside the
 * edge abreast of where the disc went out; in front the spot that was thrown from. Trouble in front is
 * FRONT_TROUBLE_DEPTH_M deep (assumption), and what ends before it is a lay-up.
 */
export function endsOf(
  form: ThrowForm,
  power: number,
  target: Target,
  trouble: Trouble,
  aimM: number,
): Ends {
  const { distanceM, playsLikeM } = target;
  const { behindM, frontM, leftM, rightM } = edgesOf(trouble);
  const { centre, scale } = powerSpread(form, power, doubtOf(target));
  const scaleOf = (alongM: number): number => {
    const carryM = playsLikeM * (1 + alongM / distanceM);
    return carryM > 0 ? (Math.log(carryM) - centre) / scale : -Infinity;
  };
  const along = (fromM: number, toM: number, count: number): Points => {
    const rule = spreadRule(form.freedom, count, scaleOf(fromM), scaleOf(toM));
    return pointsOf(rule, (scales) => missM(Math.exp(centre + scale * scales), target));
  };
  const { scaleRad, freedom } = form.side;
  const across = (fromM: number, toM: number, count: number): Points => {
    const angle = (sideM: number): number => Math.atan((sideM - aimM) / distanceM) / scaleRad;
    const rule = spreadRule(freedom, count, angle(fromM), angle(toM));
    return pointsOf(rule, (scales) => aimM + distanceM * sideSlope(scaleRad * scales));
  };
  const on = along(frontM, behindM, ALONG);
  const behind = along(behindM, Infinity, BEYOND);
  const layUp = along(-Infinity, frontM - FRONT_TROUBLE_DEPTH_M, ALONG);
  const inside = across(leftM, rightM, ACROSS);
  const left = across(-Infinity, leftM, BEYOND);
  const right = across(rightM, Infinity, BEYOND);
  const [leftLieM, rightLieM] = [leftM + INSIDE_EDGE_M, rightM - INSIDE_EDGE_M];
  const behindLieM = behindM - INSIDE_EDGE_M;

  const ends = { leftM: [] as number[], shares: [] as number[] };
  const add = (alongs: Points, acrosses: Points): void =>
    alongs.atM.forEach((alongM, i) =>
      acrosses.atM.forEach((sideM, j) => {
        ends.leftM.push(Math.hypot(alongM, sideM));
        ends.shares.push(alongs.shares[i]! * acrosses.shares[j]!);
      }),
    );
  add(on, inside);
  add(layUp, inside);
  const safe = ends.leftM.length;
  add(allAt(behindLieM, behind), inside);
  for (const sides of [allAt(leftLieM, left), allAt(rightLieM, right)])
    for (const stretch of [on, layUp, allAt(behindLieM, behind)]) add(stretch, sides);
  const met = ends.shares.reduce((sum, share) => sum + share, 0);
  // Rounding must not make trouble where there is none.
  return { ...ends, safe, again: frontM > -Infinity ? Math.max(0, 1 - met) : 0 };
}

interface Points {
  readonly atM: readonly number[];
  readonly shares: readonly number[];
}

const pointsOf = (
  { scales, weights }: SpreadRule,
  placeOf: (scales: number) => number,
): Points => ({
  atM: Array.from(scales, placeOf),
  shares: Array.from(weights),
});

/** All of these throws at one place. */
function allAt(placeM: number, { shares }: Points): Points {
  const share = shares.reduce((sum, one) => sum + one, 0);
  return share > 0 ? { atM: [placeM], shares: [share] } : { atM: [], shares: [] };
}

/**
 * Expected strokes with a throw that may end so, this one included, `table` saying what each distance
 * left takes: S = 1 + Σ share·V + Σ penalised share + again·(1 + S). Infinity where no throw gets away.
 */
export function strokesOf({ leftM, shares, safe, again }: Ends, table: Float64Array): number {
  let strokes = 1 + again;
  for (let end = 0; end < leftM.length; end++)
    strokes += shares[end]! * (valueAt(table, leftM[end]!) + (end < safe ? 0 : 1));
  return again < 1 - 1e-9 ? strokes / (1 - again) : Infinity;
}

/** Mean distance from the target to where the next throw is made, m. */
export function meanLeftM({ leftM, shares, again }: Ends, { distanceM }: Target): number {
  return leftM.reduce((sum, left, end) => sum + shares[end]! * left, again * distanceM);
}
