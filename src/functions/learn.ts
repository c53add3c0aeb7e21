/** Custom function that learns from rounds. */
import { learnFactors } from "../core/learn/learnFactors";
import { readRounds } from "../core/log/readRounds";
import { answer } from "./answer";
import { receiveCard, receiveSettings } from "./readings";
import { receiveRange } from "./receive";
import { learnCells } from "./spills";

/**
 * What rounds teach: uphill factor, wind factor and how far the course plays off the field.
 * @customfunction LEARN
 * @param rounds The rounds with their header row: distance, rise, headwind, disc, power, finish.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns Factor, mean, plus or minus, rows; under a header row.
 * @example =CARRY.LEARN(Results[#All],Throws[#All],Settings)
 */
export function learn(rounds: any[][], throws: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const rows = readRounds(receiveRange(rounds, "rounds"), known);
    return learnCells(learnFactors(rows, receiveCard(throws, settings), known));
  });
}
