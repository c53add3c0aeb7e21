/** From figures to places on a plot. */
export interface Scale {
  (value: number): number;
  /** Round values within the domain, for ticks. */
  readonly ticks: readonly number[];
}

/** A straight scale from a domain to pixels; a domain of no width is widened by one either way. */
export function scale(
  [low, high]: readonly [number, number],
  [from, to]: readonly [number, number],
  wanted = 5,
): Scale {
  const [start, end] = low === high ? [low - 1, high + 1] : [low, high];
  const place = (value: number): number => from + ((value - start) / (end - start)) * (to - from);
  return Object.assign(place, { ticks: roundValues(start, end, wanted) });
}

/** Values of one, two or five times a power of ten, about as many as wanted. */
export function roundValues(low: number, high: number, wanted: number): number[] {
  const rough = (high - low) / wanted;
  const power = 10 ** Math.floor(Math.log10(rough));
  const step = [1, 2, 5, 10].map((by) => by * power).find((size) => size >= rough) ?? power;
  const first = Math.ceil(low / step);
  const count = Math.floor(high / step) - first + 1;
  return Array.from({ length: Math.max(0, count) }, (_, at) =>
    Number(((first + at) * step).toPrecision(12)),
  );
}

/** A path through points, for the d of an SVG path. */
export const pathThrough = (points: readonly (readonly [x: number, y: number])[]): string =>
  points.map(([x, y], at) => `${at === 0 ? "M" : "L"}${x.toFixed(1)} ${y.toFixed(1)}`).join("");

/** The place in a list of positions that is nearest to one. */
export function nearestAt(positions: readonly number[], to: number): number {
  let best = 0;
  positions.forEach((position, at) => {
    if (Math.abs(position - to) < Math.abs(positions[best]! - to)) best = at;
  });
  return best;
}
