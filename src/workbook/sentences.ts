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
  failed: (doing: string) => `${doing} did not work. The workbook is as it was.`,
} as const;
