/** What one unit of a column is worth in SI: by the unit in its header, else by the settings. */
import { toMetres, toMps, type DistanceUnit, type WindUnit } from "../units";
import type { Column } from "./headings";
import { DISTANCE_WORDS, WIND_WORDS } from "./unitWords";

export const metresPer = (column: Column | undefined, unit: DistanceUnit): number =>
  toMetres(1, DISTANCE_WORDS.get(column?.unit ?? "") ?? unit);

export const mpsPer = (column: Column | undefined, unit: WindUnit): number =>
  toMps(1, WIND_WORDS.get(column?.unit ?? "") ?? unit);
