/** Custom functions that choose. */
import { bestChance } from "../core/choice/chance";
import { planCourse } from "../core/choice/plan";
import { powerFor } from "../core/choice/power";
import { rankOptions } from "../core/choice/rank";
import { strokesToHoleOut } from "../core/choice/strokes";
import { rowOf } from "../core/carry/levelThrows";
import { unavailable } from "../core/errors";
import { messages } from "../core/messages";
import type { CardRow, Settings } from "../core/types";
import { toMetres } from "../core/units";
import { answer } from "./answer";
import { receiveCard, receiveCourse, receiveSettings, receiveShot } from "./readings";
import { receiveCount, receivePositive, receiveText } from "./receive";
import { optionCells, planCells } from "./spills";

/**
 * The disc to throw for a distance.
 * @customfunction BEST
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [settings] Two columns: label and value.
 * @param [rank] 1 the best, 2 the second choice, and so on.
 * @returns Name of the disc.
 * @example =CARRY.BEST(327,Throws[#All],6,3,Settings)
 */
export function best(
  distance: any,
  throws: any[][],
  rise?: any,
  headwind?: any,
  settings?: any[][],
  rank?: any,
): string {
  return answer(() => {
    const known = receiveSettings(settings);
    const shot = receiveShot(distance, rise, headwind, known);
    const options = rankOptions(shot, receiveCard(throws, settings), known);
    const place = receiveCount(rank, "rank", 1);
    const option = options[place - 1];
    if (!option) throw unavailable(messages.functions.noRank(place, options.length));
    return option.disc;
  });
}

/**
 * Every way to play a distance, best first, one row a disc.
 * @customfunction OPTIONS
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [settings] Two columns: label and value.
 * @param [count] How many discs; blank for five.
 * @returns Disc, power, chance in the circle, what it leaves, strokes, long or short, aim; under a header row.
 * @example =CARRY.OPTIONS(327,Throws[#All],6,3,Settings,3)
 */
export function options(
  distance: any,
  throws: any[][],
  rise?: any,
  headwind?: any,
  settings?: any[][],
  count?: any,
): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const shot = receiveShot(distance, rise, headwind, known);
    const most = receiveCount(count, "count", 5);
    return optionCells(rankOptions(shot, receiveCard(throws, settings), known, most), known);
  });
}

/** What one disc answers, by its row of the card. */
function withDisc<T>(
  disc: unknown,
  throws: unknown,
  settings: unknown,
  ask: (row: CardRow, settings: Settings) => T,
): T {
  const known = receiveSettings(settings);
  return ask(rowOf(receiveCard(throws, settings), receiveText(disc, "disc")), known);
}

/**
 * Chance to finish in the circle with one disc, at its best power.
 * @customfunction CHANCE
 * @param disc Name of the disc.
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [settings] Two columns: label and value.
 * @returns A share from 0 to 1.
 * @example =CARRY.CHANCE("Copper mid",290,Throws[#All],0,0,Settings)
 */
export function chance(
  disc: any,
  distance: any,
  throws: any[][],
  rise?: any,
  headwind?: any,
  settings?: any[][],
): number {
  return answer(() =>
    withDisc(disc, throws, settings, (row, known) =>
      bestChance(receiveShot(distance, rise, headwind, known), row, known),
    ),
  );
}

/**
 * How hard to throw one disc, as a share of smooth, for it to land there.
 * @customfunction POWER
 * @param disc Name of the disc.
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [settings] Two columns: label and value.
 * @returns 1 is smooth.
 * @example =CARRY.POWER("Copper mid",280,Throws[#All],0,0,Settings)
 */
export function power(
  disc: any,
  distance: any,
  throws: any[][],
  rise?: any,
  headwind?: any,
  settings?: any[][],
): number {
  return answer(() =>
    withDisc(disc, throws, settings, (row, known) =>
      powerFor(receiveShot(distance, rise, headwind, known), row, known),
    ),
  );
}

/**
 * Expected strokes to hole out from a distance, with these throws and putts.
 * @customfunction STROKES
 * @param distance Distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value; the putting table below them.
 * @returns Expected strokes.
 * @example =CARRY.STROKES(327,Throws[#All],Settings)
 */
export function strokes(distance: any, throws: any[][], settings?: any[][]): number {
  return answer(() => {
    const known = receiveSettings(settings);
    const distanceM = toMetres(receivePositive(distance, "distance"), known.distanceUnit);
    return strokesToHoleOut(distanceM, receiveCard(throws, settings), known);
  });
}

/**
 * The disc for every hole of a course.
 * @customfunction PLAN
 * @param course The course with its header row: hole, distance, rise, headwind, trouble, line.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns One row a hole, under a header row.
 * @example =CARRY.PLAN(Course[#All],Throws[#All],Settings)
 */
export function plan(course: any[][], throws: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const holes = receiveCourse(course, known);
    return planCells(planCourse(holes, receiveCard(throws, settings), known), known);
  });
}
