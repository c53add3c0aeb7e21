import type { Settings } from "../types";
import { airDensity } from "./air";

/** What of the settings bears on plays-like distances. */
export interface Conditions {
  readonly densityKgM3: number;
  /** How much of the modelled effect of rise, and of wind and air, this player meets; 1 until learnt. */
  readonly uphillFactor: number;
  readonly windFactor: number;
}

/** The conditions that the settings describe: their air (see airDensity) and learnt factors. */
export const conditionsOf = (settings: Settings): Conditions => ({
  densityKgM3: airDensity(settings),
  uphillFactor: settings.uphillFactor,
  windFactor: settings.windFactor,
});
