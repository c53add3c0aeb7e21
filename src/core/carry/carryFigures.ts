/** From the figures of one row of a card back to the distribution of the next throw. */
import { LEAST_PRIOR_FREEDOM, LEAST_SPREAD, PRIOR_FREEDOM, UPPER_TENTH } from "../constants";
import { freedomOf } from "./freedomOf";
import { tQuantile } from "./student";

/** A hand-made figure that asks for a wider spread of ln carry, or for more throws, counts as not given. */
const WIDEST = 1;
const MOST_THROWS = 1e6;

/** Figures of a card in m; NaN where the card does not give one. */
export interface CarryFigures {
  readonly carry: number;
  readonly low: number;
  readonly high: number;
  readonly spread: number;
  readonly knownTo: number;
  readonly throws: number;
}

export interface NextThrow {
  readonly mu: number;
  readonly scale: number;
  readonly freedom: number;
  readonly evidence: number;
}

/**
 * With a = ln(High/Carry) and k = Known to/Carry, both t·scale times a function of n, the evidence is
 * n = (a/k)² − 1; the scale is Spread/Carry; and t = k·√n/scale tells the freedom. Exact to rounding
 * for a card that we printed. What a hand-made card leaves out is filled in from what is there: n from
 * the count of throws, else one throw; the spread from the interval, else the usual spread; the freedom of the
 * prior and of those throws. Figures that contradict each other never give less freedom than a card of
 * ours has.
 *
 * @example
 * nextThrow({ carry: 90, low: NaN, high: NaN, spread: 5, knownTo: NaN, throws: NaN }, 0.07)
 * // one throw with scale 5/90 and freedom 4: a wide interval
 */
export function nextThrow(figures: CarryFigures, usualSpread: number): NextThrow {
  const { carry } = figures;
  const a = firstWithin(WIDEST, Math.log(figures.high / carry), Math.log(carry / figures.low));
  const k = firstWithin(WIDEST, figures.knownTo / carry);
  const evidence = Math.max(1, firstWithin(MOST_THROWS, (a / k) ** 2 - 1, figures.throws, 1));
  const tScale = firstWithin(WIDEST, k * Math.sqrt(evidence), a / Math.sqrt(1 + 1 / evidence));
  const guessed = PRIOR_FREEDOM + evidence - 1;
  const scale = firstWithin(
    WIDEST,
    figures.spread / carry,
    tScale / tQuantile(UPPER_TENTH, guessed),
    usualSpread,
  );
  const told = figures.spread / carry >= LEAST_SPREAD && tScale > 0;
  return {
    mu: Math.log(carry),
    scale,
    freedom: told ? Math.max(LEAST_PRIOR_FREEDOM, freedomOf(tScale / scale)) : guessed,
    evidence,
  };
}

/** The first of some numbers that is no slip and at most `most`; NaN where there is none. */
const firstWithin = (most: number, ...numbers: readonly number[]): number =>
  numbers.find((number) => number >= LEAST_SPREAD && number <= most) ?? NaN;
