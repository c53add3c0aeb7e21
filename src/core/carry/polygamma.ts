/** Derivatives of ln Γ, as the moderated variance needs them. For x > 0; NaN otherwise. */

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
