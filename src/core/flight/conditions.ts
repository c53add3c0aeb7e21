import type { Settings } from "../types";
import { airDensity } from "./air";

/** How much of a modelled effect a player meets, and the standard deviation of that. */
export interface Factor {
  readonly value: number;
  readonly sd: number;
}

/** What of the settings bears on plays-like distances. */
export interface Conditions {
  readonly densityKgM3: number;
  /** Of what rise and air add; of what a headwind and what a tailwind adds. */
  readonly uphill: Factor;
  readonly headwind: Factor;
  readonly tailwind: Factor;
}

const ALL: Factor = { value: 1, sd: 0 };

/** The whole of each modelled effect, with no doubt of it: the flight alone. */
export const FULL_EFFECT = { uphill: ALL, headwind: ALL, tailwind: ALL } as const;

/** The conditions that the settings describe: their air (see airDensity) and learnt factors. */
export const conditionsOf = (settings: Settings): Conditions => ({
  densityKgM3: airDensity(settings),
  uphill: { value: settings.uphillFactor, sd: settings.uphillSd },
  headwind: { value: settings.headwindFactor, sd: settings.headwindSd },
  tailwind: { value: settings.tailwindFactor, sd: settings.tailwindSd },
});
