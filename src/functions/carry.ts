/** Custom functions about what each disc does. Read cells, ask the core, shape the spill. */
import { cardCells } from "../core/carry/cardCells";
import { neededThrows } from "../core/carry/needed";
import { rowOf } from "../core/carry/levelThrows";
import { trendOf } from "../core/carry/wear";
import { fromMetres, toMetres } from "../core/units";
import { answer } from "./answer";
import { answerEach } from "./each";
import { receiveBag, receiveCard, receiveLog, receiveSettings } from "./readings";
import { receivePositive, receiveText } from "./receive";
import { wearCells } from "./spills";

/**
 * Smooth carry of one disc.
 * @customfunction SMOOTH
 * @param disc Name of the disc.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns Smooth carry, in the unit of the settings.
 * @example =CARRY.SMOOTH("Copper mid",Throws[#All],Settings)
 */
export function smooth(disc: any[][], throws: any[][], settings?: any[][]): any[][] {
  return answerEach({ disc }, () => {
    const card = receiveCard(throws, settings);
    const unit = receiveSettings(settings).distanceUnit;
    return (at) => fromMetres(Math.exp(rowOf(card, receiveText(at.disc, "disc")).mu), unit);
  });
}

/**
 * The card: smooth carry of every disc with its 80 % interval, spread and evidence, longest first.
 * @customfunction CARD
 * @param throws The throw log with its header row, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [bag] The bag with its header row: disc, type, line, in bag.
 * @returns One row a disc, under a header row.
 * @example =CARRY.CARD(Throws[#All],Settings,Bag[#All])
 */
export function card(throws: any[][], settings?: any[][], bag?: any[][]): any[][] {
  return answer(() => cardCells(receiveCard(throws, settings, bag), receiveSettings(settings)));
}

/**
 * How many more smooth throws until the carry of a disc is known to a margin.
 * @customfunction NEEDED
 * @param disc Name of the disc.
 * @param margin Half width of the interval wanted, such as 8.
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @returns Throws still needed.
 * @example =CARRY.NEEDED("Sand approach",8,Throws[#All],Settings)
 */
export function needed(
  disc: any[][],
  margin: any[][],
  throws: any[][],
  settings?: any[][],
): any[][] {
  return answerEach({ disc, margin }, () => {
    const card = receiveCard(throws, settings);
    const unit = receiveSettings(settings).distanceUnit;
    return (at) => {
      const row = rowOf(card, receiveText(at.disc, "disc"));
      return neededThrows(row, toMetres(receivePositive(at.margin, "margin"), unit));
    };
  });
}

/**
 * Whether a disc is changing: verdict, change a month, p, throws.
 * @customfunction WEAR
 * @param disc Name of the disc.
 * @param throws The throw log with its header row.
 * @param [settings] Two columns: label and value.
 * @param [bag] The bag with its header row: a disc's type tells how wind and slope changed its carry.
 * @returns Verdict, change of carry a month, p, throws; under a header row.
 * @example =CARRY.WEAR("Copper mid",Throws[#All],Settings)
 */
export function wear(disc: any, throws: any[][], settings?: any[][], bag?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const log = receiveLog(throws, settings);
    return wearCells(trendOf(receiveText(disc, "disc"), log, known, receiveBag(bag)), known);
  });
}
