/** Custom functions that learn from what happened on the course. */
import { calibration as calibrationOf } from "../core/learn/calibration";
import { type Factors, type Learnt, learnFactors } from "../core/learn/learnFactors";
import { learnPutting } from "../core/learn/learnPutting";
import { readPutts, readRounds } from "../core/log/readRounds";
import { answer, type Out, type Spill } from "./answer";
import { receiveCard, receiveSettings } from "./readings";
import { receiveRange } from "./receive";
import { calibrationCells, puttingCells } from "./spills";

/**
 * What rounds teach: factors of slope and wind, and how the course differs from the field.
 * @customfunction LEARN
 * @param rounds The rounds with their header row: distance, rise, headwind, disc, power, and any of finish, offline, in circle.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns Factor, value, plus or minus, rows; under a header row.
 * @example =CARRY.LEARN(Results[#All],Throws[#All],Settings)
 */
export function learn(rounds: any[][], throws: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const rows = readRounds(receiveRange(rounds, "rounds"), known);
    return learnCells(learnFactors(rows, receiveCard(throws, settings), known));
  });
}

/** Under the labels of the settings that take the values. */
function learnCells(factors: Factors): Spill {
  const line = (name: string, { value, sd, rows }: Learnt): Out[] => [name, value, sd, rows];
  return [
    ["Factor", "Value", "Plus or minus", "Rows"],
    line("Uphill factor", factors.uphill),
    line("Headwind factor", factors.headwind),
    line("Tailwind factor", factors.tailwind),
    line("Course carry", factors.courseCarry),
    line("Course spread", factors.courseSpread),
    line("Course side", factors.courseSide),
  ];
}

/**
 * Did it come true? The chances that the settings tell now, against what happened.
 * @customfunction CALIBRATION
 * @param rounds The rounds with their header row: distance, rise, headwind, disc, power, and in circle, or finish and offline.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns Chance told, share that happened with its 80 % interval, rows, Brier score, p, in words; then groups of like chances; under a header row.
 * @example =CARRY.CALIBRATION(Results[#All],Throws[#All],Settings)
 */
export function calibration(rounds: any[][], throws: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const rows = readRounds(receiveRange(rounds, "rounds"), known);
    return calibrationCells(calibrationOf(rows, receiveCard(throws, settings), known));
  });
}

/**
 * A putting table learnt from putts made and tried.
 * @customfunction PUTTING
 * @param putts Putts with their header row: distance, made, tried.
 * @param [settings] Two columns: label and value; the distances of their putting table are answered.
 * @returns Distance, share made, low and high; under a header row.
 * @example =CARRY.PUTTING(Putts[#All],Settings)
 */
export function putting(putts: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const distancesM = known.putting.map(({ distanceM }) => distanceM);
    const rows = readPutts(receiveRange(putts, "putts"), known);
    return puttingCells(learnPutting(rows, distancesM), known);
  });
}
