/** Custom function that reads phone notes. */
import { readNotes } from "../core/notes/readNotes";
import { answer } from "./answer";
import { receiveBag, receiveSettings } from "./readings";
import { receiveLines } from "./receive";
import { notesCells } from "./spills";

/**
 * A throw table out of free phone notes; what could not be read is listed, never dropped.
 * @customfunction NOTES
 * @param text One cell or a range of lines, as "mint fairway 352, 344 x 290".
 * @param [bag] The bag with its header row, to recognise names.
 * @param [settings] Two columns: label and value; their unit is that of the notes.
 * @returns Rows in the columns of the throw log, under a header row.
 * @example =CARRY.NOTES("mint fairway 352, 344 x 290")
 */
export function notes(text: any[][], bag?: any[][], settings?: any[][]): any[][] {
  return answer(() => {
    const known = receiveSettings(settings);
    return notesCells(readNotes(receiveLines(text, "text"), receiveBag(bag), known), known);
  });
}
