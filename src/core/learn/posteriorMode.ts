/** The most likely values of a few unknowns, and how sure they are. */

/** A function to be made small, with its slope in each unknown. */
export interface Slope {
  /** Infinity where the unknowns make no sense. */
  readonly value: number;
  readonly gradient: readonly number[];
}

export interface Posterior {
  readonly mode: readonly number[];
  /** Standard deviations by Laplace's approximation: roots of the diagonal of the inverse Hessian. */
  readonly sd: readonly number[];
}

const MOST_STEPS = 100;
/** Twice the expected gain of a step, in log density, that is not worth taking. */
const CLOSE = 1e-12;
/** Step of the central differences, in prior standard deviations: error about 1e-8 of the curvature. */
const DIFFERENCE = 1e-4;
const FIRST_DAMPING = 1e-3;
const MOST_DAMPING = 1e12;

/**
 * Mode of a posterior and its spread there, by Newton's method with Levenberg's damping (Levenberg
 * 1944, Q. Appl. Math. 2:164): a step is taken only if it makes the density larger, so that errors
 * with heavy tails, whose log density is not concave, cannot send it away.
 *
 * @param minusLog Minus the log of the posterior density, up to a constant, with its gradient.
 * @param start Where to begin, usually the prior means.
 * @param scales Rough size of each unknown's doubt, usually the prior standard deviations; above 0.
 * @returns The mode, and the standard deviation of each unknown.
 * @example
 * posteriorMode(([x]) => ({ value: (x! - 3) ** 2 / 8, gradient: [(x! - 3) / 4] }), [0], [1])
 * // { mode: [3], sd: [2] }
 */
export function posteriorMode(
  minusLog: (unknowns: readonly number[]) => Slope,
  start: readonly number[],
  scales: readonly number[],
): Posterior {
  let at = start.slice();
  let here = minusLog(at);
  let damping = 0;
  for (let step = 0; step < MOST_STEPS; step++) {
    const curvature = curvatureAt(minusLog, at, scales);
    const found = downhillStep(minusLog, at, here, curvature, scales, damping);
    if (!found) break;
    ({ at, here, damping } = found);
    if (found.gain < CLOSE) break;
  }
  const root = cholesky(curvatureAt(minusLog, at, scales));
  const sd = at.map((_, index) =>
    root ? Math.sqrt(solve(root, unit(index, at.length))[index]!) : scales[index]!,
  );
  return { mode: at, sd };
}

interface Step {
  readonly at: number[];
  readonly here: Slope;
  /** What to begin the next step with. */
  readonly damping: number;
  /** Twice the gain in log density that the quadratic model promised. */
  readonly gain: number;
}

/** The first damped Newton step that does not make the density smaller; null where there is none. */
function downhillStep(
  minusLog: (unknowns: readonly number[]) => Slope,
  at: readonly number[],
  here: Slope,
  curvature: readonly (readonly number[])[],
  scales: readonly number[],
  firstDamping: number,
): Step | null {
  for (
    let damping = firstDamping;
    damping <= MOST_DAMPING;
    damping = 10 * damping || FIRST_DAMPING
  ) {
    const root = cholesky(
      curvature.map((row, i) =>
        row.map((value, j) => (i === j ? value + damping / scales[i]! ** 2 : value)),
      ),
    );
    if (!root) continue;
    const move = solve(root, here.gradient);
    const gain = move.reduce((sum, part, i) => sum + part * here.gradient[i]!, 0);
    const next = at.map((value, i) => value - move[i]!);
    const there = minusLog(next);
    if (there.value <= here.value)
      return { at: next, here: there, damping: damping < FIRST_DAMPING ? 0 : damping / 10, gain };
    if (gain < CLOSE) return null;
  }
  return null;
}

/** Second derivatives by central differences of the gradient, made symmetric. */
function curvatureAt(
  minusLog: (unknowns: readonly number[]) => Slope,
  at: readonly number[],
  scales: readonly number[],
): number[][] {
  const rows = at.map((value, index) => {
    const step = DIFFERENCE * scales[index]!;
    const moved = (by: number): readonly number[] =>
      minusLog(at.map((other, j) => (j === index ? value + by : other))).gradient;
    const [above, below] = [moved(step), moved(-step)];
    return above.map((slope, j) => (slope - below[j]!) / (2 * step));
  });
  return rows.map((row, i) => row.map((value, j) => (value + rows[j]![i]!) / 2));
}

/** The lower triangle L with L·Lᵀ = matrix; null where the matrix is not positive definite. */
function cholesky(matrix: readonly (readonly number[])[]): number[][] | null {
  const root = matrix.map((row) => row.map(() => 0));
  for (let i = 0; i < matrix.length; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = matrix[i]![j]!;
      for (let k = 0; k < j; k++) sum -= root[i]![k]! * root[j]![k]!;
      if (i === j && !(sum > 0)) return null;
      root[i]![j] = i === j ? Math.sqrt(sum) : sum / root[j]![j]!;
    }
  }
  return root;
}

/** x with L·Lᵀ·x = right side. */
function solve(root: readonly (readonly number[])[], right: readonly number[]): number[] {
  const x = right.slice();
  for (let i = 0; i < x.length; i++) {
    for (let k = 0; k < i; k++) x[i]! -= root[i]![k]! * x[k]!;
    x[i]! /= root[i]![i]!;
  }
  for (let i = x.length - 1; i >= 0; i--) {
    for (let k = i + 1; k < x.length; k++) x[i]! -= root[k]![i]! * x[k]!;
    x[i]! /= root[i]![i]!;
  }
  return x;
}

const unit = (index: number, size: number): number[] =>
  Array.from({ length: size }, (_, other) => (other === index ? 1 : 0));
