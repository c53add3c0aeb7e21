/**
 * Excel shows a reference to the row of a formula as Table[@Column] or Table[@[Two words]]; the
 * port and files write it in full. Without the table's name Excel understands both forms alike.
 *
 * @example thisRowInFull("=Course[@Hole]") // "=Course[[#This Row],[Hole]]"
 */
export const thisRowInFull = (formula: string): string =>
  formula
    .replace(/\[@\[([^\]]+)\]\]/g, "[[#This Row],[$1]]")
    .replace(/\[@([^[\]]+)\]/g, "[[#This Row],[$1]]");
