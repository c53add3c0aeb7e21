/** Custom functions about what each disc does. Read cells, ask the core, shape the spill. */
import { cardCells } from "../core/carry/cardCells";
import { neededThrows } from "../core/carry/needed";
import { rowOf } from "../core/carry/levelThrows";
import { trendOf } from "../core/carry/wear";
import { fromMetres, toMetres } from "../core/units";
import { answer } from "./answer";
import { receiveCard, receiveLog, receiveSettings } from "./readings";
import { receivePositive, receiveText } from "./receive";
import { trendCells } from "./spills";

/**
 * Smooth carry of one disc.
 * @customfunction SMOOTH
 * @param disc Name of the disc.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns Smooth carry, in the unit of the settings.
 * @example =CARRY.SMOOTH("Copper mid",Throws[#All],Settings)
 */
export function smooth(disc: any, throws: any[][], settings?: any[][]): number {
  return answer(() => {
    const row = rowOf(receiveCard(throws, settings), receiveText(disc, "disc"));
    return fromMetres(Math.exp(row.mu), receiveSettings(settings).distanceUnit);
  });
}

/**
 * The card: smooth carry of every disc with its 80 % interval, spread and evidence, longest first.
 * @customfunction CARD
 * @param throws The throw log with its header row, or a list of disc and carry.
 * @param [bag] The bag with its header row: disc, type, line, in bag.
 * @param [settings] Two columns: label and value.
 * @returns One row a disc, under a header row.
 * @example =CARRY.CARD(Throws[#All],Bag[#All],Settings)
 */
export function card(throws: any[][], bag?: any[][], settings?: any[][]): any[][] {
  return answer(() => cardCells(receiveCard(throws, settings, bag), receiveSettings(settings)));
}

/**
 * How many more smooth throws until the carry of a disc is known to a margin.
 * @customfunction NEEDED
 * @param disc Name of the disc.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param margin Half width of the interval wanted, such as 8.
 * @param [settings] Two columns: label and value.
 * @returns Throws still needed.
 * @example =CARRY.NEEDED("Sand approach",Throws[#All],8,Settings)
 */
export function needed(disc: any, throws: any[][], margin: any, settings?: any[][]): number {
  return answer(() => {
    const row = rowOf(receiveCard(throws, settings), receiveText(disc, "disc"));
    const unit = receiveSettings(settings).distanceUnit;
    return neededThrows(row, toMetres(receivePositive(margin, "margin"), unit));
  });
}

/**
 * Whether a disc is changing: verdict, change a month, p, throws.
 * @customfunction TREND
 * @param disc Name of the disc.
 * @param throws The throw log with its header row.
 * @param [settings] Two columns: label and value.
 * @returns Verdict, change of carry a month, p, throws; under a header row.
 * @example =CARRY.TREND("Copper mid",Throws[#All],Settings)
 */
export function trend(disc: any, throws: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    return trendCells(
      trendOf(receiveText(disc, "disc"), receiveLog(throws, settings), known),
      known,
    );
  });
}
