import { unusable } from "../errors";
import { messages } from "../messages";
import { toRadians } from "../units";

/** The 16 points of the compass, clockwise from north, each 22.5° on. */
const COMPASS = [
  ...["N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE"],
  ...["S", "SSW", "SW", "WSW", "W", "WNW", "NW", "NNW"],
];

const WORDS: Record<string, string> = { NORTH: "N", EAST: "E", SOUTH: "S", WEST: "W" };

/** Two turns either way: a sum of two directions is still one, other numbers are slips. Assumption. */
const MOST_DEGREES = 720;

/** "north-west" and "N W" become "NW". */
const compassPoint = (text: string): string =>
  text
    .toUpperCase()
    .replace(/NORTH|EAST|SOUTH|WEST/g, (word) => WORDS[word]!)
    .replace(/[\s-]/g, "");

/**
 * A direction in degrees clockwise from north: a number of up to two turns as it stands, whole degrees as text
 * ("270", "270°"), or a compass point such as NW, nnw or north-west. An `unusable` error,
 * which calls the value by `name`, for anything else.
 *
 * @example
 * parseDirection("SW") // 225
 */
export function parseDirection(given: unknown, name = "direction"): number {
  if (typeof given === "number" && Math.abs(given) <= MOST_DEGREES) return given;
  if (typeof given !== "string") throw unusable(messages.flight.badDirection(name, `${given}`));
  if (/^\s*\d{1,3}\s*°?\s*$/.test(given)) return parseInt(given, 10);
  const point = COMPASS.indexOf(compassPoint(given));
  if (point === -1) throw unusable(messages.flight.badDirection(name, `'${given}'`));
  return point * 22.5;
}

/** From the throw's bearing clockwise to where the wind comes from, rad. */
const windAngle = (fromDegrees: number, bearingDegrees: number): number =>
  toRadians(fromDegrees - bearingDegrees);

/**
 * The part of a wind that blows against a throw, in the unit of the speed; negative for a
 * tailwind. Both directions in degrees clockwise from north: where the wind comes from, and
 * where the throw goes.
 *
 * @example
 * headwindMps(5, 90, 90) // 5
 */
export const headwindMps = (
  speedMps: number,
  fromDegrees: number,
  bearingDegrees: number,
): number => speedMps * Math.cos(windAngle(fromDegrees, bearingDegrees));

/**
 * The part of a wind that blows across a throw, in the unit of the speed; positive from the
 * left. Directions as for `headwindMps`.
 *
 * @example
 * crosswindMps(5, 0, 90) // 5
 */
export const crosswindMps = (
  speedMps: number,
  fromDegrees: number,
  bearingDegrees: number,
): number => -speedMps * Math.sin(windAngle(fromDegrees, bearingDegrees));

/** One force of the Beaufort scale. */
export interface BeaufortForce {
  readonly force: number;
  readonly name: string;
  /** What it does on land, to tell it by eye. */
  readonly sight: string;
  /** Least wind of the force, m/s. */
  readonly leastMps: number;
  /** Usual wind of the force, m/s: 0.836·force^1.5. */
  readonly usualMps: number;
}

const RAW: readonly (readonly [name: string, leastMps: number, sight: string])[] = [
  ["calm", 0, "smoke rises straight up"],
  ["light air", 0.3, "smoke drifts, vanes stay"],
  ["light breeze", 1.6, "felt on the face, leaves rustle"],
  ["gentle breeze", 3.4, "leaves and twigs keep moving, light flags stretch"],
  ["moderate breeze", 5.5, "dust and paper lift, small branches move"],
  ["fresh breeze", 8, "small trees in leaf sway"],
  ["strong breeze", 10.8, "large branches move, wires whistle"],
  ["near gale", 13.9, "whole trees move, walking is an effort"],
];

/**
 * The Beaufort scale, for a wind that is told by eye, force 0 to 7. Wind at 10 m above open
 * ground; least and usual speeds from the World Meteorological Organization (Manual on Codes,
 * WMO-No. 306, code table 1100; usual speed v = 0.836·B^1.5).
 */
export const BEAUFORT: readonly BeaufortForce[] = RAW.map(([name, leastMps, sight], force) => ({
  force,
  name,
  sight,
  leastMps,
  usualMps: 0.836 * force ** 1.5,
}));

/**
 * Horizontal distance from a line-of-sight range and its angle above the horizontal, rad; in
 * the unit of the range. Negative angles look down. NaN for NaN.
 *
 * @example
 * levelM(100, Math.PI / 3) // 50.0000…
 */
export const levelM = (rangeM: number, angleRad: number): number => rangeM * Math.cos(angleRad);

/**
 * Rise from a line-of-sight range and its angle above the horizontal, rad; in the unit of the
 * range, negative below. NaN for NaN.
 *
 * @example
 * riseM(100, Math.PI / 6) // 49.9999…
 */
export const riseM = (rangeM: number, angleRad: number): number => rangeM * Math.sin(angleRad);
