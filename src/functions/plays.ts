/** Custom functions about slope, wind and air. */
import { conditionsOf } from "../core/flight/air";
import { playsLikeBandM, playsLikeM } from "../core/flight/playsLike";
import { flightPath, windDriftM } from "../core/flight/path";
import { STANDARD_DENSITY } from "../core/constants";
import { fromMetres, toMetres, toMps } from "../core/units";
import { answer } from "./answer";
import { answerEach } from "./each";
import { receiveSettings, receiveShot } from "./readings";
import { receiveNumber, receivePositive, receiveType } from "./receive";
import { bandCells, flightCells } from "./spills";

/**
 * Plays-like distance: the level, calm, sea-level distance that asks for the same throw.
 * @customfunction PLAYSLIKE
 * @param distance Horizontal distance to the target.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [type] putter, midrange, fairway or distance; blank goes by the distance.
 * @param [settings] Two columns: label and value.
 * @returns Plays-like distance, in the unit of the settings.
 * @example =CARRY.PLAYSLIKE(360,10)
 */
export function playsLike(
  distance: any[][],
  rise?: any[][],
  headwind?: any[][],
  type?: any[][],
  settings?: any[][],
): any[][] {
  return answerEach({ distance, rise, headwind, type }, () => {
    const known = receiveSettings(settings);
    const conditions = conditionsOf(known);
    return (at) => {
      const shot = receiveShot(at.distance, at.rise, at.headwind, known);
      return fromMetres(playsLikeM(shot, conditions, receiveType(at.type)), known.distanceUnit);
    };
  });
}

/**
 * The plays-like distance with the band in which it lies in eight of ten cases.
 * @customfunction PLAYSBAND
 * @param distance Horizontal distance to the target.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [type] putter, midrange, fairway or distance; blank goes by the distance.
 * @param [settings] Two columns: label and value.
 * @returns Low, likely, high; under a header row.
 * @example =CARRY.PLAYSBAND(360,10)
 */
export function playsBand(
  distance: any,
  rise?: any,
  headwind?: any,
  type?: any,
  settings?: any[][],
): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const shot = receiveShot(distance, rise, headwind, known);
    return bandCells(playsLikeBandM(shot, conditionsOf(known), receiveType(type)), known);
  });
}

/**
 * Air density as a share of the standard atmosphere at sea level.
 * @customfunction AIR
 * @param [settings] Two columns: label and value (temperature, altitude, humidity).
 * @returns 1 is standard air.
 * @example =CARRY.AIR(Settings)
 */
export function air(settings?: any[][]): number {
  return answer(() => conditionsOf(receiveSettings(settings)).densityKgM3 / STANDARD_DENSITY);
}

/**
 * How far a crosswind carries the disc sideways.
 * @customfunction DRIFT
 * @param distance Horizontal distance to the target.
 * @param crosswind Wind from the left positive, from the right negative.
 * @param [type] putter, midrange, fairway or distance; blank goes by the distance.
 * @param [settings] Two columns: label and value.
 * @returns Sideways carry, right positive, in the unit of the settings.
 * @example =CARRY.DRIFT(300,6)
 */
export function drift(
  distance: any[][],
  crosswind: any[][],
  type?: any[][],
  settings?: any[][],
): any[][] {
  return answerEach({ distance, crosswind, type }, () => {
    const known = receiveSettings(settings);
    const conditions = conditionsOf(known);
    return (at) => {
      const distanceM = toMetres(receivePositive(at.distance, "distance"), known.distanceUnit);
      const windMps = toMps(receiveNumber(at.crosswind, "crosswind", 0), known.windUnit);
      const driftM = windDriftM(distanceM, windMps, conditions, receiveType(at.type));
      return fromMetres(driftM, known.distanceUnit);
    };
  });
}

/**
 * The path of the disc over the ground, for a chart.
 * @customfunction FLIGHT
 * @param distance Horizontal distance to the target.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [type] putter, midrange, fairway or distance; blank goes by the distance.
 * @param [settings] Two columns: label and value.
 * @returns Distance, height and seconds, one row a point, under a header row.
 * @example =CARRY.FLIGHT(300,10,5)
 */
export function flight(
  distance: any,
  rise?: any,
  headwind?: any,
  type?: any,
  settings?: any[][],
): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const shot = receiveShot(distance, rise, headwind, known);
    return flightCells(flightPath(shot, conditionsOf(known), receiveType(type)), known);
  });
}
