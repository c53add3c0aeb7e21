import { cardSheet } from "./card";
import { type Content, EMPTY, STARTER } from "./content";
import { discsSheet } from "./discs";
import { holesSheet } from "./holes";
import { logSheet } from "./log";
import { roundsSheet } from "./rounds";
import { startSheet } from "./start";
import type { Blueprint } from "./types";

/**
 * The workbook with this content. Sheets, tables and names are a file format: Start (names Settings, Putting), Log (table Throws,
 * name PhoneNotes), Discs (table Bag), Card (name MyCard), Holes (table Course, name MyPlan),
 * Rounds (table Results: a table may not be named as its sheet).
 */
export const blueprintOf = (content: Content): Blueprint => ({
  sheets: [
    startSheet(content),
    logSheet(content),
    discsSheet(content),
    cardSheet(content),
    holesSheet(content),
    roundsSheet(content),
  ],
});

/** The workbook with invented data, every function at work. */
export const starterBlueprint = (): Blueprint => blueprintOf(STARTER);

/** The same sheets without data, for a player's own. */
export const emptyBlueprint = (): Blueprint => blueprintOf(EMPTY);
