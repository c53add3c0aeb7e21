/**
 * Keys for remembering what was read from a range. Many cells send the same log, each call with a
 * copy of its own, so readings are kept by content. A host that vouches for one unchanging array by
 * freezing it skips even the look at the content.
 */
import type { Cells } from "../core/types";

const fingerprints = new WeakMap<Cells, string>();
const float = new Float64Array(1);
const words = new Uint32Array(float.buffer);

/** Two independent 32-bit running hashes over the kind and content of every cell. */
function fingerprint(cells: Cells): string {
  let first = 0x811c9dc5;
  let second = 0x9e3779b9;
  const mix = (word: number): void => {
    first = Math.imul(first ^ word, 0x01000193);
    second = Math.imul(second ^ word, 0x85ebca6b);
    second = (second << 13) | (second >>> 19);
  };
  const mixText = (text: string, kind: number): void => {
    mix(kind);
    mix(text.length);
    for (let at = 0; at < text.length; at++) mix(text.charCodeAt(at));
  };
  for (const row of cells) {
    mix(row.length);
    for (const cell of row) {
      if (typeof cell === "number") {
        float[0] = cell;
        mix(words[0]!);
        mix(words[1]!);
      } else if (typeof cell === "string") mixText(cell, 1);
      else if (cell === null || cell === undefined) mix(2);
      else mixText(JSON.stringify(cell), 3);
    }
  }
  return `${cells.length}:${(first >>> 0).toString(36)}:${(second >>> 0).toString(36)}`;
}

/** A short key that is the same for equal content and differs with any change. */
export function contentKey(cells: Cells | null): string {
  if (cells === null) return "-";
  const known = fingerprints.get(cells);
  if (known !== undefined) return known;
  const key = fingerprint(cells);
  if (Object.isFrozen(cells)) fingerprints.set(cells, key);
  return key;
}
