/** The settings of a player who has set nothing. */
import {
  CIRCLE_M,
  HIGHEST_POWER,
  LOWEST_POWER,
  MEMORY_DAYS,
  SIDE_SPREAD_RAD,
  USUAL_PUTTING_FT,
  USUAL_SPREAD,
} from "../constants";
import type { Settings } from "../types";
import { toMetres } from "../units";

export const DEFAULT_SETTINGS: Settings = {
  player: null,
  asOfDay: null,
  memoryDays: MEMORY_DAYS,
  distanceUnit: "ft",
  windUnit: "mph",
  temperatureUnit: "F",
  temperatureC: null,
  altitudeM: 0,
  humidity: null,
  circleM: CIRCLE_M,
  usualSpread: USUAL_SPREAD,
  sideSpreadRad: SIDE_SPREAD_RAD,
  lowestPower: LOWEST_POWER,
  highestPower: HIGHEST_POWER,
  aimFor: "strokes",
  uphillFactor: 1,
  windFactor: 1,
  putting: USUAL_PUTTING_FT.map(([feet, share]) => ({ distanceM: toMetres(feet, "ft"), share })),
};
