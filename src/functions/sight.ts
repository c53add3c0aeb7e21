/** Custom functions about what a range finder and the wind tell. */
import { crosswindMps, headwindMps, levelM, riseM } from "../core/flight/wind";
import { toRadians } from "../core/units";
import { answerEach } from "./each";
import { receiveAngle, receiveDirection, receiveNumber, receivePositive } from "./receive";

/**
 * Horizontal distance from a line-of-sight range and its angle.
 * @customfunction LEVEL
 * @param range Distance along the line of sight.
 * @param angle Degrees above the horizontal; below is negative.
 * @returns Horizontal distance, in the unit of the range.
 * @example =CARRY.LEVEL(301,4)
 */
export function level(range: any[][], angle: any[][]): any[][] {
  return answerEach(
    { range, angle },
    () => (at) =>
      levelM(receivePositive(at.range, "range"), toRadians(receiveAngle(at.angle, "angle"))),
  );
}

/**
 * Rise from a line-of-sight range and its angle.
 * @customfunction RISE
 * @param range Distance along the line of sight.
 * @param angle Degrees above the horizontal; below is negative.
 * @returns Rise, in the unit of the range; below is negative.
 * @example =CARRY.RISE(301,4)
 */
export function rise(range: any[][], angle: any[][]): any[][] {
  return answerEach(
    { range, angle },
    () => (at) =>
      riseM(receivePositive(at.range, "range"), toRadians(receiveAngle(at.angle, "angle"))),
  );
}

/**
 * The part of the wind that blows against the throw.
 * @customfunction HEADWIND
 * @param speed Wind speed.
 * @param from Where the wind comes from: degrees, or a compass point such as NW.
 * @param bearing Where the throw goes: degrees or a compass point.
 * @returns Headwind, in the unit of the speed; a tailwind is negative.
 * @example =CARRY.HEADWIND(8,"NW",250)
 */
export function headwind(speed: any[][], from: any[][], bearing: any[][]): any[][] {
  return answerEach(
    { speed, from, bearing },
    () => (at) =>
      headwindMps(
        receiveNumber(at.speed, "speed", 0),
        receiveDirection(at.from, "from"),
        receiveDirection(at.bearing, "bearing"),
      ),
  );
}

/**
 * The part of the wind that blows across the throw, from the left positive.
 * @customfunction CROSSWIND
 * @param speed Wind speed.
 * @param from Where the wind comes from: degrees, or a compass point such as NW.
 * @param bearing Where the throw goes: degrees or a compass point.
 * @returns Crosswind from the left, in the unit of the speed.
 * @example =CARRY.CROSSWIND(8,"NW",250)
 */
export function crosswind(speed: any[][], from: any[][], bearing: any[][]): any[][] {
  return answerEach(
    { speed, from, bearing },
    () => (at) =>
      crosswindMps(
        receiveNumber(at.speed, "speed", 0),
        receiveDirection(at.from, "from"),
        receiveDirection(at.bearing, "bearing"),
      ),
  );
}
