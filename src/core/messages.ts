import { fromMetres } from "./units";

/** "Ana, Ben and Cem" */
const listed = (names: readonly string[]): string =>
  `${names.slice(0, -1).join(", ")} and ${names[names.length - 1]}`;

/**
 * Every sentence that a DomainError can carry, in one place, so that they read alike.
 * Grouped by the folder that uses them. Each says what is wrong and where.
 */
export const messages = {
  log: {
    noColumn: (column: string, range: string) =>
      `${range} has no ${column} column; its first row must hold the headers.`,
    cardForLog: () => "This needs the throw log; a card no longer holds the single throws.",

    blank: (row: number, what: string) => `Row ${row}: ${what} is blank.`,
    error: (row: number, what: string, found: string) => `Row ${row}: ${what} is ${found}`,
    notNumber: (row: number, what: string, found: string) =>
      `Row ${row}: ${what} is ${found}. Type it as a number.`,
    notDate: (row: number, found: string) =>
      `Row ${row}: the date is ${found}. Type it again so that the sheet takes it as a date, or as year-month-day.`,
    notPositive: (row: number, what: string, found: number) =>
      `Row ${row}: ${what} must be above 0; it is ${found}.`,
    tooLong: (row: number, found: number) =>
      `Row ${row}: carry is ${found}, farther than any throw. Look at the number and its unit.`,
    tooShort: (row: number, found: number) =>
      `Row ${row}: carry is ${found}, shorter than any throw. Look at the number and its unit.`,
    tooFarOff: (row: number, what: string, found: number) =>
      `Row ${row}: ${what} is ${found}, farther off than any throw. Check the number and its unit.`,
    finishBehind: (row: number, found: number) =>
      `Row ${row}: finish is ${found}, which is behind the spot that was thrown from. Check finish and distance.`,
    notYesOrNo: (row: number, what: string, found: string) =>
      `Row ${row}: ${what} is ${found}. Write yes or no.`,
    circleContradicted: (row: number, says: string) =>
      `Row ${row}: in circle says ${says}, but finish and offline say otherwise. Correct one of them.`,
    notCount: (row: number, what: string, found: number) =>
      `Row ${row}: ${what} is ${found}. It must be a whole number from 0.`,
    moreMadeThanTried: (row: number, made: number, tried: number) =>
      `Row ${row}: ${made} made of ${tried} tried cannot be.`,
    badPower: (row: number, found: number) =>
      `Row ${row}: power is ${found}. Give it as a share of smooth, such as 0.9 or 90 %.`,
    belowZero: (row: number, what: string) => `Row ${row}: ${what} cannot be below 0.`,
    markedOff: (row: number) => `Row ${row}: marked off.`,
    severalPlayers: (names: readonly string[], others: boolean) =>
      `The log holds throws of ${listed(others ? [...names, "others"] : names)}. Choose one by the setting Player: write the name beside it.`,
    otherPlayer: (row: number, player: string) => `Row ${row}: thrown by ${player}.`,

    unlabelled: (row: number) => `Settings row ${row}: there is a value without a label.`,
    unknownSetting: (row: number, label: string) =>
      `Settings row ${row}: there is no setting called '${label}'.`,
    settingTwice: (row: number, label: string) =>
      `Settings row ${row}: '${label}' is there already.`,
    settingUnit: (label: string, unit: string) =>
      `Settings: ${label} is read in ${unit}; change its label or its unit.`,
    settingNotNumber: (label: string, found: string) =>
      `Settings: ${label} must be a number; it is ${found}.`,
    settingOutside: (label: string, found: string, low: string, high: string) =>
      `Settings: ${label} must lie from ${low} to ${high}; it is ${found}.`,
    settingNotOneOf: (label: string, found: string, words: string) =>
      `Settings: ${label} must be ${words}; it is ${found}.`,
    settingNotDate: (label: string, found: string) =>
      `Settings: ${label} must be a date; it is ${found}.`,
    settingNotText: (label: string, found: string) =>
      `Settings: ${label} must be text; it is ${found}.`,
    puttingTwice: (distance: number) => `Settings: Putting has two rows for ${distance}.`,
  },
  carry: {
    noThrows: () => "There are no throws to answer from.",
    noDay: () => "No throw has a date, so there is no day to compare.",
    noThrowsThatDay: () => "There is no throw of that day.",
    formTooFew: (throws: number, discs: number, leastThrows: number, leastDiscs: number) =>
      `The form of a day takes ${leastThrows} throws with ${leastDiscs} discs that were also thrown on other days. So far: ${throws} with ${discs}.`,
    noDatedThrow: (disc: string) => `No throw of '${disc}' has a date.`,
    noSuchDisc: (disc: string) => `No throw of '${disc}' counts.`,
    noSuchDiscBut: (disc: string, nearest: string) =>
      `No throw of '${disc}' counts. Did you mean '${nearest}'?`,
    noSuchDiscBecause: (disc: string, reason: string) => `No throw of '${disc}' counts. ${reason}`,
    marginNotPositive: (margin: number) => `The margin must be above 0; it is ${margin}.`,
    neverKnown: () => "No number of throws that anyone makes gives so small a margin.",
    onCardTwice: (row: number, disc: string) => `Row ${row}: '${disc}' is on the card already.`,
    notLevelled: (row: number, reason: string) =>
      `Row ${row}: its carry cannot be brought to level, calm air. ${reason}`,
  },
  flight: {
    badDistance: () => "The distance must be a number above 0.",
    badRise: () => "The rise must be a number.",
    badWind: () => "The wind must be a number.",
    badDirection: (name: string, found: string) =>
      `${name} must be degrees or a compass point such as NW; it is ${found}.`,
    outOfReach: () => "No throw reaches this target: it is too far, too high or too windy.",
    outrun: () =>
      "A throw this soft is not covered here: the wind is faster, or the drop alone carries a disc past the target.",
    nothingLeft: () => "With these factors slope and wind leave nothing to throw.",
    tooSteep: () => "The slope to this target is steeper than 45 degrees; that is not covered.",
    tooWindy: () => "The wind is above 40 m/s (89 mph); no throw is worked out in that.",
  },
  choice: {
    emptyBag: () => "No disc with a throw that counts is in the bag.",
    noLine: (line: string) => `No disc in the bag is thrown on the line '${line}'.`,
    outOfReach: (disc: string) =>
      `No disc gets there: even with ${disc}, the longest, no throw reaches this target.`,
    noScore: (hole: string, why: string) =>
      `Hole ${hole} has no answer, so the round has no score. ${why}`,
    onlyTrouble: () => "No disc in the bag keeps a throw out of the trouble here.",
    tooLong: (limitM: number) =>
      `The distance must be above 0 and at most ${limitM} m (${Math.floor(fromMetres(limitM, "ft"))} ft).`,
    tooSoft: (disc: string, needed: string, lowest: string) =>
      `${disc} would need ${needed} of smooth, softer than its softest, ${lowest}. Take a shorter disc.`,
    tooFar: (disc: string, needed: string, highest: string) =>
      `${disc} would need ${needed} of smooth, harder than your highest power, ${highest}. Take a longer disc.`,
  },
  bag: {
    badSteps: () =>
      "The distances must be above 0, from the smaller to the larger, by a step above 0.",
    tooManySteps: (rows: number, limitM: number) =>
      `Ask for at most ${rows} distances, up to ${limitM} m. Take a wider step.`,
    oneDisc: () => "With fewer than two discs in the bag there is nothing to compare.",
    badCount: () => "The number of discs must be 1 or more.",
    noHole: () => "There is no hole on the course.",
  },
  learn: {
    noRows: () => "There are no rounds to learn from.",
    noneUsable: (row: number, reason: string) =>
      `No row of the rounds can be learnt from. Row ${row}: ${reason}`,
    noFinishes: () =>
      "No row of the rounds says both how long and how far to the side a throw finished.",
    noPutts: () => "There are no putts to learn from.",
    noneInOrOut: () =>
      "No row of the rounds says whether a throw finished in the circle. Fill in In circle, or Finish and Offline.",
  },
  notes: {
    ambiguousDate: () => "Day or month first? Write it as year-month-day.",
    noYear: () => "Which year? Write it with the year.",
    noSuchDay: () => "There is no such day.",
    twoOrOne: () => "One throw or two? Write a point for a fraction, a space between throws.",
    range: () => "A range or two throws? Write a space between throws.",
    otherUnit: () => "Only feet and metres are read.",
    windNote: () => "Wind is not read from notes; put it in the log.",
    notCarry: () => "Too short or too long for a carry.",
    noDisc: () => "No disc for this.",
    noCarry: () => "No carry for this.",
    noAmount: () => "How far to the side? Write a number beside it.",
    dateInside: () => "A date stands on a line of its own, or before the disc.",
    dayUnread: () => "Its date was not read.",
    shortOrLong: () => "Short and long are not read; write the carry itself.",
    loneMark: () => "Which carry is marked? Write the mark against it, as 290x.",
    markBetween: (before: string, mark: string, after: string) =>
      `The ${mark} between ${before} and ${after} marks ${after}; for ${before} write ${before}${mark}.`,
    badPower: () => "Not a share of smooth.",
    unknown: () => "Not understood.",
  },
  functions: {
    missing: (name: string) => `${name} is missing.`,
    notNumber: (name: string, found: string) => `${name} must be a number; it is ${found}.`,
    notPositive: (name: string, found: number) => `${name} must be above 0; it is ${found}.`,
    notDirection: (name: string, found: string) =>
      `${name} must be degrees or a compass point such as NW; it is ${found}.`,
    notAngle: (name: string, found: number) =>
      `${name} must lie between -90 and 90 degrees; it is ${found}.`,
    notDate: (name: string, found: string) => `${name} must be a date; it is ${found}.`,
    notCount: (name: string, found: number) =>
      `${name} must be a whole number from 1; it is ${found}.`,
    notText: (name: string, found: string) => `${name} must be text; it is ${found}.`,
    notType: (found: string) =>
      `type must be putter, midrange, fairway or distance; it is ${found}.`,
    shapesDiffer: (name: string, shape: string, other: string, otherShape: string) =>
      `${name} is ${shape} cells and ${other} ${otherShape}: give ranges of one shape, or single cells.`,
    tooManyAnswers: (name: string, count: number, most: number) =>
      `${name} asks for ${count} answers; one formula gives at most ${most}. Give the rows of a table, not whole columns.`,
    tooLarge: (name: string) =>
      `${name} has more cells than a function can be sent. Give the table, not whole columns.`,
    noRank: (rank: number, count: number) =>
      `There is no disc of rank ${rank} here; ${count} can be thrown for this.`,
    failed: (what: string) => `Carrybook could not work this out (${what}).`,
  },
  workbook: {
    twofoldDate: (found: string) =>
      `${found} can be read in two ways. Write the dates as year-month-day.`,
    partnerUnnamed: () => "Give the partner's name, so that their throws stay apart from yours.",
    partnerIsPlayer: (name: string) =>
      `'${name}' is you. Give the partner another name, so that their throws stay apart from yours.`,
  },
} as const;
