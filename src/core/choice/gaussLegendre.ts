/** Gauss–Legendre rules. */
import { remember } from "../memory";

export interface Rule {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
}

const memory = remember<Rule>(16);

/**
 * The rule of `count` points from `from` to `to`: Σ weights · f(nodes) approaches the integral of f,
 * exactly so for polynomials up to degree 2·count − 1.
 *
 * @example
 * gaussLegendre(2, -1, 1).nodes // [−0.577…, 0.577…]
 */
export function gaussLegendre(count: number, from: number, to: number): Rule {
  const { nodes, weights } = memory(`${count}`, () => plainRule(count));
  const half = (to - from) / 2;
  return {
    nodes: nodes.map((node) => from + half * (1 + node)),
    weights: weights.map((weight) => half * weight),
  };
}

/** From −1 to 1: roots by Newton's method from the usual cosine start (NIST DLMF 3.5(v) and 18.16). */
function plainRule(count: number): Rule {
  const nodes = new Float64Array(count);
  const weights = new Float64Array(count);
  for (let index = 0; index < count; index++) {
    let root = -Math.cos((Math.PI * (index + 0.75)) / (count + 0.5));
    let { value, slope } = legendre(count, root);
    for (let round = 0; round < 50 && Math.abs(value) > 1e-15; round++) {
      root -= value / slope;
      ({ value, slope } = legendre(count, root));
    }
    nodes[index] = root;
    weights[index] = 2 / ((1 - root * root) * slope * slope);
  }
  return { nodes, weights };
}

/** The Legendre polynomial of a degree and its slope inside (−1, 1), by the three-term recurrence. */
function legendre(degree: number, x: number): { value: number; slope: number } {
  let before = 0;
  let value = 1;
  for (let n = 1; n <= degree; n++) {
    [before, value] = [value, ((2 * n - 1) * x * value - (n - 1) * before) / n];
  }
  return { value, slope: (degree * (x * value - before)) / (x * x - 1) };
}
