/**
 * Moderated variance: what all discs tell of the spread of one. Smyth 2004, Stat. Appl. Genet. Mol.
 * Biol. 3(1):3. A variance with its freedom is pulled towards a prior that is itself worth some
 * degrees of freedom.
 */
import {
  LEAST_DISCS_FOR_PRIOR,
  LEAST_PRIOR_FREEDOM,
  MOST_PRIOR_FREEDOM,
  PRIOR_FREEDOM,
} from "../constants";

// Derivatives of ln Γ, as the moderated variance needs them. For x > 0; NaN otherwise.

/** From here on the asymptotic series below is good to 1e-14. */
const LARGE = 12;

/**
 * ψ(x), the derivative of ln Γ(x). Recurrence up to 12, then the asymptotic series
 * (NIST DLMF 5.5.2 and 5.11.2). Absolute error below 1e-13.
 *
 * @example
 * digamma(1) // −0.5772156649… (minus Euler's constant)
 */
export function digamma(x: number): number {
  if (!(x > 0)) return NaN;
  let sum = 0;
  let at = x;
  for (; at < LARGE; at++) sum -= 1 / at;
  const q = 1 / (at * at);
  const series = q * (1 / 12 - q * (1 / 120 - q * (1 / 252 - q * (1 / 240 - q / 132))));
  return sum + Math.log(at) - 0.5 / at - series;
}

/**
 * ψ′(x), the derivative of `digamma`. Recurrence up to 12, then the asymptotic series
 * (NIST DLMF 5.15.5 and 5.15.8). Relative error below 1e-13.
 *
 * @example
 * trigamma(1) // 1.6449340668… (π²/6)
 */
export function trigamma(x: number): number {
  if (!(x > 0)) return NaN;
  let sum = 0;
  let at = x;
  for (; at < LARGE; at++) sum += 1 / (at * at);
  const q = 1 / (at * at);
  const series = q * (1 / 6 - q * (1 / 30 - q * (1 / 42 - q * (1 / 30 - (q * 5) / 66))));
  return sum + 1 / at + q / 2 + series / at;
}

/**
 * The x > 0 with trigamma(x) = value, for value > 0; NaN otherwise. Bisection between the bounds
 * 1/x < ψ′(x) < 1/x + 1/x². Relative error below 1e-14.
 *
 * @example
 * trigammaInverse(2) // 0.8766640775… (Smyth 2004)
 */
export function trigammaInverse(value: number): number {
  if (!(value > 0)) return NaN;
  let low = 1 / value;
  let high = (1 + Math.sqrt(1 + 4 * value)) / (2 * value);
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (trigamma(middle) > value) low = middle;
    else high = middle;
  }
}

/** A variance and the degrees of freedom that it rests on. */
export interface Variance {
  readonly variance: number;
  readonly freedom: number;
}

/**
 * The prior that a set of variances tells, by the moments of their logarithms. Freedom within
 * `least` … `most`, and `most` where the variances differ no more than chance alone would make
 * them. Each variance and freedom above 0, two or more of them; NaN otherwise.
 *
 * @example
 * fitPrior([0.5, 1.3, 7.8].map((variance) => ({ variance, freedom: 3 })), 0, Infinity)
 * // { variance: 1.676927…, freedom: 2.830777… }
 */
export function fitPrior(found: readonly Variance[], least: number, most: number): Variance {
  const logs = found.map(
    ({ variance, freedom }) => Math.log(variance) - digamma(freedom / 2) + Math.log(freedom / 2),
  );
  const logMean = mean(logs);
  const between =
    logs.reduce((sum, log) => sum + (log - logMean) ** 2, 0) / (logs.length - 1) -
    mean(found.map(({ freedom }) => trigamma(freedom / 2)));
  const told = between > 0 ? 2 * trigammaInverse(between) : most;
  const freedom = Math.min(most, Math.max(least, told));
  return { variance: Math.exp(logMean + digamma(freedom / 2) - Math.log(freedom / 2)), freedom };
}

/**
 * The prior for one bag: told by the bag from five discs on that have a spread of their own, else
 * the usual spread pooled with what little there is. Variances of ln carry; `usualSpread` a share.
 */
export function priorVariance(found: readonly Variance[], usualSpread: number): Variance {
  const telling = found.filter(({ variance, freedom }) => freedom >= 1 && variance > 0);
  if (telling.length >= LEAST_DISCS_FOR_PRIOR)
    return fitPrior(telling, LEAST_PRIOR_FREEDOM, MOST_PRIOR_FREEDOM);
  const usual = { variance: usualSpread ** 2, freedom: PRIOR_FREEDOM };
  return { variance: found.reduce(moderate, usual).variance, freedom: PRIOR_FREEDOM };
}

/**
 * Two variances pooled by their freedom: of a prior and of one disc's own throws.
 *
 * @example
 * moderate({ variance: 4, freedom: 1 }, { variance: 1, freedom: 2 }) // { variance: 2, freedom: 3 }
 */
export function moderate(prior: Variance, own: Variance): Variance {
  const freedom = prior.freedom + own.freedom;
  return {
    variance: (prior.freedom * prior.variance + own.freedom * own.variance) / freedom,
    freedom,
  };
}

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;
