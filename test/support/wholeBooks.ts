/** Whole workbooks side by side: cell by cell, name by name. */
import { cellRef } from "../../src/workbook/a1";
import type { WholeBook } from "../../src/workbook/wholeBook";

/** All that a workbook holds as plain text, one line a fact, sorted; `looks` false leaves the looks out. */
export function factsOf({ sheets, names }: WholeBook, looks = true): string[] {
  const facts = names.map(({ name, refersTo, sheet }) => `name ${sheet ?? ""}!${name} ${refersTo}`);
  sheets.forEach((sheet, index) => {
    const say = (what: string, value: unknown): void => {
      // Keys in one order, so that equal objects read the same.
      const keys = (_: string, inner: unknown): unknown =>
        inner !== null && typeof inner === "object" && !Array.isArray(inner)
          ? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : 1)))
          : inner;
      facts.push(`${sheet.name} ${what} ${JSON.stringify(value, keys)}`);
    };
    const { hidden, frozenRows, frozenColumns, gridLines, charts, print } = sheet;
    say("sheet", { index, hidden, frozenRows, frozenColumns, gridLines, charts, print });
    for (const [row, line] of sheet.cells)
      line.forEach((cell, column) => {
        if (!cell) return;
        const { look, value, ...rest } = cell;
        // The sentence of an error is the page's own; files hold the code.
        const shown = typeof value === "object" ? value.error : value;
        const ref = cellRef({ row, column });
        if (shown !== "" || rest.formula !== undefined) say(ref, { value: shown, ...rest });
        if (looks && look) say(`${ref} look`, look);
      });
    for (const [column, line] of sheet.columns) say(`column ${column}`, line);
    for (const [row, line] of sheet.rows) say(`row ${row}`, line);
    for (const table of sheet.tables) say("table", table);
    for (const area of sheet.merged) say("merged", area);
    for (const { areas, ...rule } of sheet.rules)
      for (const area of areas) say("rule", { area, ...rule });
    for (const area of sheet.bars) say("bar", area);
  });
  return facts.sort();
}
