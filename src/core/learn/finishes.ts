/** Where throws at a target finished, seen from above. */
import { unavailable } from "../errors";
import { messages } from "../messages";
import type { RoundRow } from "../types";

/** A finish: along the line beyond the target, and sideways, right positive. */
export interface Finish {
  readonly alongM: number;
  readonly sideM: number;
}

/** An ellipse by its middle, its half axes, and the angle from along the line to the long axis, right positive. */
export interface Ellipse extends Finish {
  readonly longM: number;
  readonly shortM: number;
  readonly turnRad: number;
}

export interface Scatter {
  readonly finishes: readonly Finish[];
  /** Hold a half and eight tenths of finishes that scatter as these do; null below five finishes. */
  readonly half: Ellipse | null;
  readonly eightTenths: Ellipse | null;
}

/** Fewer finishes do not tell an ellipse. Assumption. */
const LEAST_FOR_ELLIPSE = 5;

/**
 * The finishes of rounds that note both finish and offline, with the ellipses of a bivariate normal of
 * their mean and covariance (n − 1) that hold 50 and 80 %: at a squared distance of −2 ln(1 − share),
 * the quantile of chi-square with two degrees of freedom.
 *
 * @param rounds Throws on the course; those without finish or offline are passed over.
 * @throws `unavailable` where none has both.
 * @example
 * finishScatter(rounds).eightTenths?.longM // 14.2
 */
export function finishScatter(rounds: readonly RoundRow[]): Scatter {
  const finishes = rounds.flatMap(({ finishM, offlineM }) =>
    finishM === null || offlineM === null ? [] : [{ alongM: finishM, sideM: offlineM }],
  );
  if (finishes.length === 0) throw unavailable(messages.learn.noFinishes());
  const known = finishes.length >= LEAST_FOR_ELLIPSE;
  return {
    finishes,
    half: known ? ellipseOf(finishes, 0.5) : null,
    eightTenths: known ? ellipseOf(finishes, 0.8) : null,
  };
}

function ellipseOf(finishes: readonly Finish[], share: number): Ellipse {
  const mean = (of: (finish: Finish) => number): number =>
    finishes.reduce((sum, finish) => sum + of(finish), 0) / finishes.length;
  const alongM = mean((finish) => finish.alongM);
  const sideM = mean((finish) => finish.sideM);
  const bessel = finishes.length / (finishes.length - 1);
  const along = bessel * mean((finish) => (finish.alongM - alongM) ** 2);
  const side = bessel * mean((finish) => (finish.sideM - sideM) ** 2);
  const both = bessel * mean((finish) => (finish.alongM - alongM) * (finish.sideM - sideM));
  const middle = (along + side) / 2;
  const half = Math.hypot((along - side) / 2, both);
  const reach = -2 * Math.log(1 - share);
  return {
    alongM,
    sideM,
    longM: Math.sqrt(reach * (middle + half)),
    shortM: Math.sqrt(reach * Math.max(0, middle - half)),
    turnRad: Math.atan2(2 * both, along - side) / 2,
  };
}
