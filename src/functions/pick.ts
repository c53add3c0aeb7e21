/** Custom functions that choose. */
import { bestChance } from "../core/choice/chance";
import { compareDiscs } from "../core/choice/compare";
import { planCourse } from "../core/choice/plan";
import { powerFor } from "../core/choice/power";
import { rankOptions } from "../core/choice/rank";
import { scoresOf } from "../core/choice/scores";
import { strokesToHoleOut } from "../core/choice/strokes";
import { rowOf } from "../core/carry/levelThrows";
import { unavailable } from "../core/errors";
import { messages } from "../core/messages";
import type { CardRow, Settings, Shot } from "../core/types";
import { toMetres } from "../core/units";
import { answer } from "./answer";
import { answerEach } from "./each";
import { receiveCard, receiveCourse, receiveSettings, receiveShot } from "./readings";
import { receiveCount, receivePositive, receiveText } from "./receive";
import { comparisonCells, optionCells, planCells, scoreCells } from "./spills";

/**
 * The disc to throw for a distance.
 * @customfunction BEST
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [rank] 1 the best, 2 the second choice, and so on.
 * @returns Name of the disc.
 * @example =CARRY.BEST(327,Throws[#All],Settings,6,3)
 */
export function best(
  distance: any[][],
  throws: any[][],
  settings?: any[][],
  rise?: any[][],
  headwind?: any[][],
  rank?: any[][],
): any[][] {
  return answerEach({ distance, rise, headwind, rank }, () => {
    const known = receiveSettings(settings);
    const card = receiveCard(throws, settings);
    return (at) => {
      const shot = receiveShot(at.distance, at.rise, at.headwind, known);
      const place = receiveCount(at.rank, "rank", 1);
      const options = rankOptions(shot, card, known);
      const option = options[place - 1];
      if (!option) throw unavailable(messages.functions.noRank(place, options.length));
      return option.disc;
    };
  });
}

/**
 * Every way to play a distance, best first, one row a disc.
 * @customfunction OPTIONS
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @param [count] How many discs; blank for five.
 * @returns Disc, power, chance in the circle, what it leaves, strokes, long or short, aim, the throws that follow; under a header row.
 * @example =CARRY.OPTIONS(327,Throws[#All],Settings,6,3,3)
 */
export function options(
  distance: any,
  throws: any[][],
  settings?: any[][],
  rise?: any,
  headwind?: any,
  count?: any,
): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const shot = receiveShot(distance, rise, headwind, known);
    const most = receiveCount(count, "count", 5);
    return optionCells(rankOptions(shot, receiveCard(throws, settings), known, most), known);
  });
}

/** What one disc answers for a shot, for each disc and shot. */
function answerEachDisc(
  ranges: Readonly<Record<"disc" | "distance" | "rise" | "headwind", unknown>>,
  throws: unknown,
  settings: unknown,
  ask: (shot: Shot, row: CardRow, settings: Settings) => number,
): any[][] {
  return answerEach(ranges, () => {
    const known = receiveSettings(settings);
    const card = receiveCard(throws, settings);
    return (at) => {
      const row = rowOf(card, receiveText(at.disc, "disc"));
      return ask(receiveShot(at.distance, at.rise, at.headwind, known), row, known);
    };
  });
}

/**
 * Chance to finish in the circle with one disc, at its best power.
 * @customfunction CHANCE
 * @param disc Name of the disc.
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @returns A share from 0 to 1.
 * @example =CARRY.CHANCE("Copper mid",290,Throws[#All],Settings)
 */
export function chance(
  disc: any[][],
  distance: any[][],
  throws: any[][],
  settings?: any[][],
  rise?: any[][],
  headwind?: any[][],
): any[][] {
  return answerEachDisc({ disc, distance, rise, headwind }, throws, settings, bestChance);
}

/**
 * How hard to throw one disc, as a share of smooth, for it to land there.
 * @customfunction ATPOWER
 * @param disc Name of the disc.
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @returns 1 is smooth.
 * @example =CARRY.ATPOWER("Copper mid",260,Throws[#All],Settings)
 */
export function atPower(
  disc: any[][],
  distance: any[][],
  throws: any[][],
  settings?: any[][],
  rise?: any[][],
  headwind?: any[][],
): any[][] {
  return answerEachDisc({ disc, distance, rise, headwind }, throws, settings, powerFor);
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
export function strokes(distance: any[][], throws: any[][], settings?: any[][]): any[][] {
  return answerEach({ distance }, () => {
    const known = receiveSettings(settings);
    const card = receiveCard(throws, settings);
    return (at) => {
      const distanceM = toMetres(receivePositive(at.distance, "distance"), known.distanceUnit);
      return strokesToHoleOut(distanceM, card, known);
    };
  });
}

/**
 * Which of two discs is better for a distance, and how sure that is.
 * @customfunction COMPARE
 * @param disc Name of the disc.
 * @param other Name of the disc to compare it with.
 * @param distance Horizontal distance to the target.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [rise] Target above the throwing spot; below is negative.
 * @param [headwind] Wind against the throw; a tailwind is negative.
 * @returns Strokes with each, what the first saves, the chance that it is the better one; under a header row.
 * @example =CARRY.COMPARE("Copper mid","Olive mid",262,Throws[#All],Settings)
 */
export function compare(
  disc: any,
  other: any,
  distance: any,
  throws: any[][],
  settings?: any[][],
  rise?: any,
  headwind?: any,
): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const shot = receiveShot(distance, rise, headwind, known);
    const [one, two] = [receiveText(disc, "disc"), receiveText(other, "other")];
    return comparisonCells(compareDiscs(one, two, shot, receiveCard(throws, settings), known));
  });
}

/**
 * The disc for every hole of a course, and the throws that follow.
 * @customfunction PLAN
 * @param course The course with its header row: hole, distance, rise, headwind, trouble, line.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [bag] The bag with its header row; tells the types and lines that a throw log does not.
 * @returns One row a hole, under a header row.
 * @example =CARRY.PLAN(Course[#All],Throws[#All],Settings)
 */
export function plan(course: any[][], throws: any[][], settings?: any[][], bag?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const holes = receiveCourse(course, known);
    return planCells(planCourse(holes, receiveCard(throws, settings, bag), known), known);
  });
}

/**
 * The score of a round: its mean, the range of eight rounds in ten, and the chance of each total.
 * @customfunction SCORES
 * @param course The course with its header row: hole, distance, rise, headwind, trouble, line, par.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [bag] The bag with its header row; tells the types and lines that a throw log does not.
 * @returns Mean and range, then total, chance of it, chance of it or better; each under a header row.
 * @example =CARRY.SCORES(Course[#All],Throws[#All],Settings)
 */
export function scores(
  course: any[][],
  throws: any[][],
  settings?: any[][],
  bag?: any[][],
): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const holes = receiveCourse(course, known);
    return scoreCells(scoresOf(holes, receiveCard(throws, settings, bag), known));
  });
}
