import { DEFAULT_SETTINGS } from "../../core/log/readSettings";
import {
  THROW_HEADERS,
  type ThrowField,
  throwLayout,
  throwsShape,
} from "../../core/log/readThrows";
import { findColumns } from "../../core/log/headings";
import { toMetres, toMps } from "../../core/units";
import type { CellValue } from "../port";

type Rows = readonly (readonly CellValue[])[];

/** Rows that may stand above the header. */
const SEARCHED = 20;

/** The columns of the table Throws, in its order. */
const FIELDS = Object.keys(THROW_HEADERS) as ThrowField[];

function headerRow(cells: Rows): number {
  return cells.slice(0, SEARCHED).findIndex((row) => {
    const { disc, carry } = findColumns(row, THROW_HEADERS);
    return disc && carry;
  });
}

const isList = (cells: Rows): boolean => {
  try {
    return throwsShape(cells) === "list";
  } catch {
    return false;
  }
};

const blank = (row: readonly CellValue[]): boolean => row.every((value) => value === "");

/**
 * Rows for the table Throws out of any cells that have a Disc and a Carry column in their first
 * rows, or are a bare list of the two; null where they are neither. Figures under a header that
 * names another unit come in the usual one.
 */
export function throwsIn(cells: Rows): CellValue[][] | null {
  const header = headerRow(cells);
  if (header < 0 && !isList(cells)) return null;
  const table = cells.slice(Math.max(header, 0));
  const { at, firstRow, ...units } = throwLayout(
    table,
    header < 0 ? "list" : "log",
    DEFAULT_SETTINGS,
  );
  const usual = toMetres(1, DEFAULT_SETTINGS.distanceUnit);
  const factors: Partial<Record<ThrowField, number>> = {
    carry: units.metresPerCarry / usual,
    offline: units.metresPerOffline / usual,
    rise: units.metresPerRise / usual,
    headwind: units.mpsPerHeadwind / toMps(1, DEFAULT_SETTINGS.windUnit),
  };
  return table
    .slice(firstRow)
    .filter((row) => !blank(row))
    .map((row) =>
      FIELDS.map((field) => {
        const value = row[at[field]] ?? "";
        return typeof value === "number" ? value * (factors[field] ?? 1) : value;
      }),
    );
}
