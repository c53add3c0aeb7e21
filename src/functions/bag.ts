/** Custom functions about the bag as a whole. */
import { coverage as coverageOf, gaps as gapsOf } from "../core/bag/coverage";
import { pack as packOf } from "../core/bag/pack";
import { twins as twinsOf, worth as worthOf } from "../core/bag/worth";
import { answer } from "./answer";
import { receiveCard, receiveCourse, receiveSettings, receiveSteps } from "./readings";
import { receiveCount } from "./receive";
import { coverageCells, gapCells, packCells, worthCells } from "./spills";

/**
 * How well the bag covers each distance.
 * @customfunction COVERAGE
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [from] First distance; blank for the shortest disc.
 * @param [to] Last distance; blank for the longest disc.
 * @param [step] Step between distances.
 * @returns Distance, best chance, ideal chance, disc; under a header row.
 * @example =CARRY.COVERAGE(Throws[#All],Settings,200,400,50)
 */
export function coverage(
  throws: any[][],
  settings?: any[][],
  from?: any,
  to?: any,
  step?: any,
): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const steps = receiveSteps(from, to, step, known);
    return coverageCells(coverageOf(receiveCard(throws, settings), known, steps), known);
  });
}

/**
 * Distances that no disc covers well, and discs that do the same thing, with what each costs.
 * @customfunction GAPS
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns Gaps, then twins; under a header row.
 * @example =CARRY.GAPS(Throws[#All],Settings)
 */
export function gaps(throws: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const bag = receiveCard(throws, settings);
    return gapCells(gapsOf(bag, known), twinsOf(bag, known), known);
  });
}

/**
 * What each disc is worth on a course: strokes lost on 18 holes if it stays at home.
 * @customfunction WORTH
 * @param course The course with its header row.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns Disc and strokes, most worth first; under a header row.
 * @example =CARRY.WORTH(Course[#All],Throws[#All],Settings)
 */
export function worth(course: any[][], throws: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const holes = receiveCourse(course, known);
    return worthCells(worthOf(holes, receiveCard(throws, settings), known));
  });
}

/**
 * The best so many discs to carry on a course, and what each further one would save.
 * @customfunction PACK
 * @param course The course with its header row; several courses may stand in it.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param count How many discs.
 * @param [settings] Two columns: label and value.
 * @param [bag] The bag with its header row; tells the types and lines that a throw log does not.
 * @returns Disc, whether to carry it, strokes on 18 holes, what one more would save; under a header row.
 * @example =CARRY.PACK(Course[#All],Throws[#All],7,Settings)
 */
export function pack(
  course: any[][],
  throws: any[][],
  count: any,
  settings?: any[][],
  bag?: any[][],
): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const holes = receiveCourse(course, known);
    const most = receiveCount(count, "count");
    return packCells(packOf(holes, receiveCard(throws, settings, bag), known, most));
  });
}
