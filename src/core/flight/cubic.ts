/** The cubic through values at 0, 1, 2 and 3, at x (Lagrange). NaN where one of them is. */
export function cubic(y0: number, y1: number, y2: number, y3: number, x: number): number {
  const [from1, from2, from3] = [x - 1, x - 2, x - 3];
  const outer = from1 * from2 * (x * y3 - from3 * y0);
  const inner = x * from3 * (from2 * y1 - from1 * y2);
  return outer / 6 + inner / 2;
}
