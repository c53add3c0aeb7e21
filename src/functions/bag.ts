/** Custom functions about the bag as a whole. */
import { coverage as coverageOf, gaps as gapsOf } from "../core/bag/coverage";
import { twins as twinsOf, worth as worthOf } from "../core/bag/worth";
import { answer } from "./answer";
import { receiveCard, receiveCourse, receiveSettings, receiveSteps } from "./readings";
import { coverageCells, gapCells, worthCells } from "./spills";

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
 * What each disc is worth on a course: strokes a round lost if it stays at home.
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
