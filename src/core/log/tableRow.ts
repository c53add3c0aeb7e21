/** One row of a table, read by columns, for tables in which a wrong cell must stop the reading. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cell, Settings } from "../types";
import { cellAt, isPower, numberIn, type PlainCell, textIn, wrongCell } from "./cell";
import { type Column, metresPer, mpsPer } from "./headings";

/** `what` names the column in sentences. A column that the table lacks reads as blank, and a blank number as 0. */
export class TableRow {
  constructor(
    private readonly cells: readonly Cell[],
    /** Number of the row in its range, the header being row 1. */
    readonly row: number,
    private readonly settings: Settings,
  ) {}

  cell(column: Column | undefined): PlainCell {
    return cellAt(this.cells, column?.index ?? -1);
  }

  text(column: Column | undefined): string {
    return textIn(this.cell(column));
  }

  number(column: Column | undefined, what: string): number {
    const number = numberIn(this.cell(column), 0);
    if (Number.isNaN(number)) throw unusable(wrongCell(this.row, what, this.cell(column)));
    return number;
  }

  metres(column: Column | undefined, what: string): number {
    return this.number(column, what) * metresPer(column, this.settings.distanceUnit);
  }

  /** Metres away from something: never below 0. */
  metresAway(column: Column | undefined, what: string): number {
    const metres = this.metres(column, what);
    if (metres < 0) throw unusable(messages.log.belowZero(this.row, what));
    return metres;
  }

  mps(column: Column | undefined, what: string): number {
    return this.number(column, what) * mpsPer(column, this.settings.windUnit);
  }

  /** A share of smooth; blank is smooth. */
  power(column: Column | undefined): number {
    const power = this.number(column, "power");
    if (!isPower(power)) throw unusable(messages.log.badPower(this.row, power));
    return power || 1;
  }
}
