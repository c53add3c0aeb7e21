/** Custom functions about what each disc does. Read cells, ask the core, shape the spill. */
import { cardCells } from "../core/carry/cardCells";
import { formOfDay } from "../core/carry/form";
import { neededThrows } from "../core/carry/needed";
import { rowOf } from "../core/carry/levelThrows";
import { practice as practiceOf } from "../core/carry/practice";
import { seriesOf } from "../core/carry/series";
import { trendOf } from "../core/carry/wear";
import { fromMetres, toMetres } from "../core/units";
import { answer } from "./answer";
import { answerEach } from "./each";
import { receiveBag, receiveCard, receiveLog, receiveSettings } from "./readings";
import { receiveDay, receivePositive, receiveText } from "./receive";
import { formCells, practiceCells, seriesCells, wearCells } from "./spills";

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

/**
 * The form of a day: how much farther or shorter than the card the player throws.
 * @customfunction FORM
 * @param throws The throw log with its header row.
 * @param [settings] Two columns: label and value.
 * @param [day] The day; blank for the newest in the log.
 * @returns Date, factor on all carries, plus or minus, throws, discs; under a header row.
 * @example =CARRY.FORM(Throws[#All],Settings)
 */
export function form(throws: any[][], settings?: any[][], day?: any): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    return formCells(formOfDay(receiveLog(throws, settings), [], known, receiveDay(day, "day")));
  });
}

/**
 * Which discs are most worth throwing next, how many throws each, and why.
 * @customfunction PRACTICE
 * @param throws The throw log with its header row, or a card, or a list of disc and carry.
 * @param [settings] Two columns: label and value.
 * @param [bag] The bag with its header row: its discs without a throw come first.
 * @returns Disc, throws to add, chance gained in the circle, known to, why; under a header row.
 * @example =CARRY.PRACTICE(Throws[#All],Settings,Bag[#All])
 */
export function practice(throws: any[][], settings?: any[][], bag?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const card = receiveCard(throws, settings, bag);
    return practiceCells(practiceOf(card, receiveBag(bag), known), known);
  });
}

/**
 * The dated throws of one disc, oldest first: what a chart of its carry over time needs.
 * @customfunction SERIES
 * @param disc Name of the disc.
 * @param throws The throw log with its header row.
 * @param [settings] Two columns: label and value.
 * @param [bag] The bag with its header row: a disc's type tells how wind and slope changed its carry.
 * @returns Date, carry as thrown, carry level and calm at smooth power, miss to the side; under a header row.
 * @example =CARRY.SERIES("Copper mid",Throws[#All],Settings)
 */
export function series(disc: any, throws: any[][], settings?: any[][], bag?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    const log = receiveLog(throws, settings);
    return seriesCells(seriesOf(receiveText(disc, "disc"), log, receiveBag(bag), known), known);
  });
}
