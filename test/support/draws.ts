/** Seeded chance for simulations. */

/** A seeded generator of numbers from 0 to 1: the mulberry32 mixing of a counter. */
export function seeded(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** A draw of Student's t for an even freedom: a normal over the root of a mean of that many squares. */
export function drawT(freedom: number, next: () => number): number {
  const normal = Math.sqrt(-2 * Math.log(1 - next())) * Math.cos(2 * Math.PI * next());
  let squares = 0;
  for (let pair = 0; pair < freedom / 2; pair++) squares -= 2 * Math.log(1 - next());
  return normal / Math.sqrt(squares / freedom);
}
