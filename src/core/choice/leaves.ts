/** How far from the target a throw leaves the disc. */
import { LONGEST_HOLE_M } from "../constants";
import type { Landing } from "./landing";
import { meanOver } from "./meanOver";
import type { Target } from "./target";

/** A table whose value at a distance is that distance. */
const DISTANCES = Float64Array.from({ length: 2 * LONGEST_HOLE_M + 1 }, (_, metre) => metre);

/**
 * Mean distance from the target after a throw, m, over all but the wildest thousandth of throws on
 * each side, along and across; distances beyond 1000 m count as 1000. Good to 0.01 m.
 */
export const leavesM = (landing: Landing, target: Target): number =>
  meanOver(landing, target, DISTANCES);
