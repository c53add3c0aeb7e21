import type { CardRow } from "../types";
import type { Target } from "./target";

/** Median finish of a disc at a power beyond the target, along the line, m; short negative. */
export const finishM = (
  { mu }: Pick<CardRow, "mu">,
  power: number,
  { distanceM, playsLikeM }: Target,
): number => ((power * Math.exp(mu) - playsLikeM) * distanceM) / playsLikeM;
