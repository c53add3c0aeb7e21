/** Areas of A1 notation, which count from 1, as ranges of the engine, which count from 0, and back. */
import type { IRange } from "@univerjs/core";
import { areaRef, quotedSheet, type Area } from "../a1";

export const engineRange = ({ top, left, bottom, right }: Area): IRange => ({
  startRow: top - 1,
  startColumn: left - 1,
  endRow: bottom - 1,
  endColumn: right - 1,
});

export const areaOf = ({ startRow, startColumn, endRow, endColumn }: IRange): Area => ({
  top: startRow + 1,
  left: startColumn + 1,
  bottom: endRow + 1,
  right: endColumn + 1,
});

/** "Log!A1:C9" for a range of a sheet. */
export const refOf = (sheet: string, range: IRange): string =>
  `${quotedSheet(sheet)}!${areaRef(areaOf(range))}`;

export const oneCell = (row: number, column: number): IRange => ({
  startRow: row,
  startColumn: column,
  endRow: row,
  endColumn: column,
});
