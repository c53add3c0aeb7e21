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
import { digamma, trigamma, trigammaInverse } from "./polygamma";

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
