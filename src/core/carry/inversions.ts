/**
 * How many pairs of a sequence stand in falling order (an earlier value above a later one); equal
 * values do not count. Merge sort on a copy: n log n.
 *
 * @example
 * inversions(Float64Array.of(3, 1, 2)) // 2
 */
export function inversions(values: Float64Array): number {
  let from = values.slice();
  let into = new Float64Array(values.length);
  let count = 0;
  for (let width = 1; width < values.length; width *= 2) {
    for (let start = 0; start < values.length; start += 2 * width) {
      count += mergeRuns(from, into, start, width);
    }
    [from, into] = [into, from];
  }
  return count;
}

/** Merges two neighbouring sorted runs; the count of pairs that were in falling order across them. */
function mergeRuns(from: Float64Array, into: Float64Array, start: number, width: number): number {
  const middle = Math.min(start + width, from.length);
  const end = Math.min(start + 2 * width, from.length);
  let left = start;
  let right = middle;
  let count = 0;
  for (let at = start; at < end; at++) {
    if (right >= end || (left < middle && from[left]! <= from[right]!)) into[at] = from[left++]!;
    else {
      into[at] = from[right++]!;
      count += middle - left;
    }
  }
  return count;
}
