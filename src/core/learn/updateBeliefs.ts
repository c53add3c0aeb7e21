/** Linear regression with what was believed before. */

/** What is believed of one coefficient: normal with this mean and standard deviation. */
export interface Belief {
  readonly mean: number;
  readonly sd: number;
}

/** One observation: Σ inputs · coefficients = output + noise, noise normal with this deviation. */
export interface Observation {
  readonly inputs: readonly number[];
  readonly output: number;
  readonly noiseSd: number;
}

/**
 * Beliefs after observations, by conjugate normal regression with known noise (Gelman et al., Bayesian
 * Data Analysis, 3rd edition, §14.8): precision P = Σ x xᵀ/σ² + prior precision, mean P⁻¹(Σ x y/σ² +
 * prior precision · prior mean). The beliefs before are independent. Without observations they stay.
 */
export function updateBeliefs(
  before: readonly Belief[],
  observations: readonly Observation[],
): Belief[] {
  const precision = before.map(({ sd }, i) => before.map((_, j) => (i === j ? sd ** -2 : 0)));
  const pull = before.map(({ mean, sd }) => mean * sd ** -2);
  for (const { inputs, output, noiseSd } of observations) {
    inputs.forEach((x, i) => {
      pull[i]! += (x * output) / noiseSd ** 2;
      inputs.forEach((other, j) => (precision[i]![j]! += (x * other) / noiseSd ** 2));
    });
  }
  const covariance = inverse(precision);
  return covariance.map((row, i) => ({
    mean: row.reduce((sum, share, j) => sum + share * pull[j]!, 0),
    sd: Math.sqrt(row[i]!),
  }));
}

/** Of a positive definite matrix, by Gauss–Jordan elimination; such a matrix needs no pivoting. */
function inverse(matrix: readonly (readonly number[])[]): number[][] {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]);
  for (let pivot = 0; pivot < size; pivot++) {
    const scale = rows[pivot]![pivot]!;
    rows[pivot] = rows[pivot]!.map((value) => value / scale);
    for (let i = 0; i < size; i++) {
      if (i === pivot) continue;
      const factor = rows[i]![pivot]!;
      rows[i] = rows[i]!.map((value, j) => value - factor * rows[pivot]![j]!);
    }
  }
  return rows.map((row) => row.slice(size));
}
