/** The sentences of PortError, so that every adapter says the same. */
export const sentences = {
  noTable: (name: string) => `There is no table ${name}.`,
  noColumn: (table: string, column: string) => `Table ${table} has no column ${column}.`,
  noRange: (ref: string) => `There is no range ${ref}.`,
  rowChanged: (table: string, row: number) =>
    `Row ${row} of ${table} has changed meanwhile. Nothing was written; look at it and try again.`,
  wrongShape: (ref: string, rows: number, columns: number) =>
    `${ref} takes ${rows} rows of ${columns} values. Nothing was written.`,
  formulaColumn: (table: string, column: string) =>
    `Column ${column} of ${table} holds formulas. Nothing was written.`,
  noRoom: (table: string) =>
    `There is something under table ${table}. Move it, so that the table can grow. Nothing was written.`,
  notANumber: "A number that is not finite cannot be stored. Nothing was written.",
  fileCannotCalculate:
    "A file cannot work its formulas out. Open it in a spreadsheet, or run npm run workbook.",
  notAWorkbook: "This is not an .xlsx workbook or a .csv file. Nothing was read.",
  fileProtected:
    "This file is protected by a password or is an old .xls file. Save it as .xlsx without a password. Nothing was read.",
  fileSigned:
    "This file carries a digital signature, which any change would make invalid. Save a copy without it. Nothing was written.",
  fileTooLarge: (megabytes: number) =>
    `This file is larger than ${megabytes} MB. Keep the throws you need and save it again. Nothing was read.`,
  fileSwells: "This file unpacks to far more than a workbook holds. Nothing was read.",
  fileBroken: "This file is damaged. Open it in a spreadsheet and save it again. Nothing was read.",
  fileHasLinks:
    "This workbook takes values from other files. Break those links and save it again. Nothing was read.",
  fileHasMacros: "This workbook holds macros. Save it as .xlsx, without them. Nothing was read.",
  fileFrom1904:
    "This workbook counts its days from 1904, which the phone cannot change. Turn that off under File › Options › Advanced in Excel. Nothing was read.",
  fileWithoutLog:
    "This file has no table Throws, so it was not saved by Carrybook. Open it in the workbook page first, which takes the throws out of it. Nothing was read.",
  fileWithoutSheet: (sheet: string) =>
    `The file has no sheet ${sheet}, and the phone adds none. Make it in the workbook page or in Excel. Nothing was written.`,
  fileTooWide:
    "A table or a name in this workbook covers millions of cells. Make it smaller and save it again. Nothing was read.",
  noThrowsInFile:
    "No sheet of this file has a Disc and a Carry column in its first rows. Nothing was read.",
  sheetProtected:
    "The sheet is protected. Take the protection off under Review and try again. Nothing was written.",
  readOnly:
    "This workbook is open to read only. Save a copy under another name and go on there. Nothing was written.",
  isReadOnly:
    "This workbook is open to read only, so nothing that the pane writes is kept. Save a copy under another name and go on there.",
  manualCalculation:
    "Excel works formulas out only when it is asked to (Formulas › Calculation Options › Manual), so the sheets may be older than the pane. Press Recalculate, or choose Automatic.",
  renamedTable: (name: string, now: string) =>
    `Table ${name} seems to be called ${now} now. Its sheets go on working, but the pane finds it only as ${name}: change the name back under Table Design.`,
  filtered: (table: string) =>
    `Table ${table} is filtered, and Excel adds and removes no rows reliably under a filter. Clear it under Data › Clear and try again. Nothing was written.`,
  totalRow: (table: string) =>
    `Table ${table} has a total row, which keeps it from growing. Take it off under Table Design › Total Row and try again. Nothing was written.`,
  notRepaired: (sheets: string) =>
    `Formulas on ${sheets} show #NAME? and could not be written again, as the sheet is protected. Take the protection off under Review and press Repair formulas.`,
  bookProtected:
    "The workbook is protected, so that no sheet can be added. Take the protection off under Review and try again. Nothing was written.",
  cellBeingEdited: "A cell is being edited. Press Enter or Escape in the sheet and try again.",
  excelTooOld: "This Excel is too old for that. Nothing was written.",
  tooMuchAtOnce: "That is more than Excel takes at once. Nothing was written.",
  placeTaken: (name: string, sheet: string) =>
    `${name} has no room on sheet ${sheet}: something stands in its place. Rename that sheet or move what is there, and try again.`,
  halfDone:
    "Excel stopped half-way and could not take back what it had done. Look at the sheet before you go on.",
  noChart: (title: string) => `The chart “${title}” could not be drawn in this Excel.`,
  noLabels: (title: string) =>
    `The discs' names could not be written into the chart “${title}” in this Excel.`,
  noPrint: "The print set-up could not be made. Excel needs a printer for it.",
  failed: (doing: string) => `${doing} did not work. The workbook is as it was.`,
} as const;
