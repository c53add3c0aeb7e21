/** Formulas that cells share are written once, for the first of them (ECMA-376 part 1, 18.3.1.40). */
import { columnLetters, readSpot } from "../a1";
import { outsideLiterals } from "./literals";
import { LAST_COLUMN, LAST_ROW } from "./sheetCells";

const REFERENCE =
  /(?<![\w.$\\:])(?:(\$?)([A-Z]{1,3})(\$?)(\d{1,7})|(\$?)([A-Z]{1,3}):(\$?)([A-Z]{1,3})|(\$?)(\d{1,7}):(\$?)(\d{1,7}))(?![\w(.!\\])/gi;
const AFTER_COLON = /(?<=:)(\$?)([A-Z]{1,3})(\$?)(\d{1,7})(?![\w(.!\\])/gi;

const moved = (fixed: string, from: number, by: number, last: number): number =>
  fixed === "$" ? from : ((((from + by - 1) % last) + last) % last) + 1;

const columnNumber = (letters: string): number => readSpot(`${letters}1`)!.column;

/**
 * A formula as it reads some rows down and columns to the right; references without $ move along, and
 * go round at the end of the sheet as they do in a spreadsheet.
 *
 * @example
 * shiftFormula("A2*$B$1+SUM(C:C)", 3, 1) // "B5*$B$1+SUM(D:D)"
 */
export function shiftFormula(formula: string, rows: number, columns: number): string {
  const column = (fixed: string, letters: string): string =>
    `${fixed}${columnLetters(moved(fixed, columnNumber(letters), columns, LAST_COLUMN))}`;
  const row = (fixed: string, digits: string): string =>
    `${fixed}${moved(fixed, Number(digits), rows, LAST_ROW)}`;
  return outsideLiterals(formula, (code) =>
    code
      .replace(
        REFERENCE,
        (whole, ...[f1, c1, f2, r1, f3, c3, f4, c4, f5, r5, f6, r6]: (string | undefined)[]) => {
          if (c1 !== undefined)
            return Number(r1) > LAST_ROW || columnNumber(c1) > LAST_COLUMN
              ? whole
              : column(f1!, c1) + row(f2!, r1!);
          if (c3 !== undefined) return `${column(f3!, c3)}:${column(f4!, c4!)}`;
          return `${row(f5!, r5!)}:${row(f6!, r6!)}`;
        },
      )
      .replace(AFTER_COLON, (_, f1: string, c1: string, f2: string, r1: string) => {
        return column(f1, c1) + row(f2, r1);
      }),
  );
}
