/** Means over where a throw may end. */
import type { Landing } from "./landing";
import type { Target } from "./target";

/**
 * The mean, over the landings that are safe, of what `table` says of the distance left: its entry for
 * every whole metre, linear between, the last one beyond. A landing's share is its weight, so shares
 * that are not safe count as 0. A throw of level carry L misses along the line by (L − D*)·D/D*, and
 * sideways by the distance times its side slope.
 */
export function meanOver(
  { carriesM, carryWeights, sideSlopes, sideWeights }: Landing,
  { distanceM, playsLikeM }: Target,
  table: Float64Array,
): number {
  const stretch = distanceM / playsLikeM;
  const last = table.length - 1;
  let mean = 0;
  for (let i = 0; i < carriesM.length; i++) {
    const alongM = (carriesM[i]! - playsLikeM) * stretch;
    let inner = 0;
    for (let j = 0; j < sideSlopes.length; j++) {
      const sideM = distanceM * sideSlopes[j]!;
      const leftM = Math.sqrt(alongM * alongM + sideM * sideM);
      const metre = leftM | 0;
      const value =
        metre < last
          ? table[metre]! + (leftM - metre) * (table[metre + 1]! - table[metre]!)
          : table[last]!;
      inner += sideWeights[j]! * value;
    }
    mean += carryWeights[i]! * inner;
  }
  return mean;
}
