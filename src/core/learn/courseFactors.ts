/** What throws on the course, put as numbers, say of the factors behind them. */
import { COURSE_PRIOR } from "../constants";
import { addThrow, UNKNOWNS, type CourseThrow, type Unknown } from "./courseThrow";
import { posteriorMode, type Slope } from "./posteriorMode";

/** The most likely value of one unknown, with a standard deviation. */
export interface Belief {
  readonly mode: number;
  readonly sd: number;
}

/**
 * The posterior of all unknowns: normal beliefs before (`COURSE_PRIOR`), t errors, the mode by damped
 * Newton steps, standard deviations by Laplace's approximation there (Gelman et al., Bayesian Data
 * Analysis, 3rd edition, §4.1 and §13.3). Without throws it is the prior.
 *
 * @example
 * courseFactors([]).uphill // { mode: 1, sd: 0.3 }
 */
export function courseFactors(throws: readonly CourseThrow[]): Record<Unknown, Belief> {
  const before = UNKNOWNS.map((name) => COURSE_PRIOR[name]);
  const minusLog = (unknowns: readonly number[]): Slope => {
    let value = 0;
    const gradient = unknowns.map((at, index) => {
      const { value: mean, sd } = before[index]!;
      value += ((at - mean) / sd) ** 2 / 2;
      return (at - mean) / sd ** 2;
    });
    for (const thrown of throws) value += addThrow(thrown, unknowns, gradient);
    return { value: Number.isNaN(value) ? Infinity : value, gradient };
  };
  const { mode, sd } = posteriorMode(
    minusLog,
    before.map(({ value }) => value),
    before.map(({ sd }) => sd),
  );
  return Object.fromEntries(
    UNKNOWNS.map((name, index) => [name, { mode: mode[index]!, sd: sd[index]! }]),
  ) as Record<Unknown, Belief>;
}
