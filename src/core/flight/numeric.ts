/** One-dimensional searches that the adapted throw rests on. */

/** Samples spread over the interval before it is narrowed, so that one of two humps is not missed. */
const SPREAD = 5;

/** Most samples after that, and how close two may lie, as a share of the interval. */
const NARROWINGS = 8;
const CLOSE = 2e-3;

/** Where the parabola through three points is least; NaN where it is not least anywhere. */
function parabolaLeast(
  [x1, y1]: readonly [number, number],
  [x2, y2]: readonly [number, number],
  [x3, y3]: readonly [number, number],
): number {
  const left = (y2 - y1) / (x2 - x1);
  const right = (y3 - y2) / (x3 - x2);
  const bend = (right - left) / (x3 - x1);
  return bend > 0 ? (x1 + x2) / 2 - left / (2 * bend) : NaN;
}

/**
 * The least value of a continuous function on an interval, both ends included: the best of a
 * few spread samples, narrowed by parabolas through it and its neighbours (successive parabolic
 * interpolation). For a smooth function the value is good to (0.2 % of the interval)² times
 * half its curvature. Infinity marks where the function has no value; Infinity everywhere
 * gives Infinity.
 */
export function leastOf(valueAt: (x: number) => number, low: number, high: number): number {
  const samples = Array.from({ length: SPREAD }, (_, index): [number, number] => {
    const x = low + ((high - low) * index) / (SPREAD - 1);
    return [x, valueAt(x)];
  });
  for (let narrowing = 0; ; narrowing++) {
    const best = samples.reduce(
      (least, [, y], index) => (y < samples[least]![1] ? index : least),
      0,
    );
    if (narrowing === NARROWINGS) return samples[best]![1];
    const middle = Math.max(1, Math.min(samples.length - 2, best));
    const [left, centre, right] = [samples[middle - 1]!, samples[middle]!, samples[middle + 1]!];
    let x = parabolaLeast(left, centre, right);
    if (Number.isNaN(x)) x = best === middle ? (left[0] + right[0]) / 2 : samples[best]![0];
    x = Math.max(left[0], Math.min(right[0], x));
    if (samples.some(([known]) => Math.abs(known - x) < CLOSE * (high - low))) {
      return samples[best]![1];
    }
    samples.push([x, valueAt(x)]);
    samples.sort(([a], [b]) => a - b);
  }
}

/**
 * Where a function that is negative at `low` and not at `high` meets zero, to `tolerance` in x,
 * by bisection sped up with the inverse parabola where that is safe (Chandrupatla 1997,
 * Advances in Engineering Software 28:145). −Infinity is a value like any other below zero.
 */
export function rootOf(
  valueAt: (x: number) => number,
  low: number,
  high: number,
  valueAtLow: number,
  valueAtHigh: number,
  tolerance: number,
): number {
  let [a, b, c] = [low, high, high];
  let [fa, fb, fc] = [valueAtLow, valueAtHigh, valueAtHigh];
  let share = Number.isFinite(fa) ? fa / (fa - fb) : 0.5;
  for (;;) {
    const least = tolerance / Math.abs(b - a);
    if (least > 0.5) return Math.abs(fa) < Math.abs(fb) ? a : b;
    const x = a + Math.max(least, Math.min(1 - least, share)) * (b - a);
    const fx = valueAt(x);
    if (fx === 0) return x;
    if (fx < 0 === fa < 0) {
      [c, fc] = [a, fa];
    } else {
      [c, fc, b, fb] = [b, fb, a, fa];
    }
    [a, fa] = [x, fx];
    const xi = (a - b) / (c - b);
    const phi = (fa - fb) / (fc - fb);
    const safe = phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi;
    share = safe
      ? (fa / (fb - fa)) * (fc / (fb - fc)) +
        ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
      : 0.5;
  }
}
