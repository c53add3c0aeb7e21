/** The powers that a throw may be planned at. */
import { POWER_STEP } from "../constants";
import type { CardRow, Settings } from "../types";
import type { Target } from "./target";

/**
 * From the softest power of a disc to the highest of the settings by hundredths, both ends included,
 * softest first. Only the highest where the softest is no lower.
 *
 * @example
 * powersOf({ softest: 0.98 }, { highestPower: 1 }) // [0.98, 0.99, 1]
 */
export function powersOf(
  { softest }: Pick<CardRow, "softest">,
  { highestPower }: Pick<Settings, "highestPower">,
): number[] {
  const lowest = Math.min(softest, highestPower);
  const steps = Math.floor((highestPower - lowest) / POWER_STEP + 1e-9);
  const powers = Array.from({ length: steps + 1 }, (_, step) =>
    // Adding hundredths drifts in the last digit; 0.94 must come out as the number that is typed.
    Number((lowest + step * POWER_STEP).toFixed(6)),
  );
  if (powers[steps]! < highestPower - 1e-9) powers.push(highestPower);
  return powers;
}

/** The index of the hardest power at which the middle throw does not pass the target, else of the softest. */
export function powerThatReaches(
  { mu }: Pick<CardRow, "mu">,
  powers: readonly number[],
  { playsLikeM }: Target,
): number {
  const needed = playsLikeM / Math.exp(mu);
  const harder = powers.findIndex((power) => power > needed);
  return harder < 0 ? powers.length - 1 : Math.max(0, harder - 1);
}
