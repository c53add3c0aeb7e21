/** The words by which people name units, for settings, column headers and notes. */
import type { DistanceUnit, TemperatureUnit, WindUnit } from "../units";

export const DISTANCE_WORDS: ReadonlyMap<string, DistanceUnit> = new Map([
  ["ft", "ft"],
  ["feet", "ft"],
  ["foot", "ft"],
  ["'", "ft"],
  ["′", "ft"],
  ["’", "ft"],
  ["m", "m"],
  ["metres", "m"],
  ["metre", "m"],
  ["meters", "m"],
  ["meter", "m"],
]);

export const WIND_WORDS: ReadonlyMap<string, WindUnit> = new Map([
  ["mph", "mph"],
  ["km/h", "km/h"],
  ["kmh", "km/h"],
  ["kph", "km/h"],
  ["m/s", "m/s"],
  ["mps", "m/s"],
]);

export const TEMPERATURE_WORDS: ReadonlyMap<string, TemperatureUnit> = new Map([
  ["f", "F"],
  ["°f", "F"],
  ["fahrenheit", "F"],
  ["c", "C"],
  ["°c", "C"],
  ["celsius", "C"],
]);
