/** The content of a package as sheets for a program that calculates: values, formulas, tables, names. */
import { cellRef, type Area } from "../a1";
import type { Blueprint, CellsPlan, FormulaPlan, NamePlan, TablePlan } from "../blueprint/types";
import type { CellValue } from "../port";
import type {
  FormulaContent,
  SheetContent,
  TableContent,
  WorkbookContent,
} from "../package/readContent";
import { typedFormula } from "./formulaText";

export const inside = ({ top, left, bottom, right }: Area, row: number, column: number): boolean =>
  row >= top && row <= bottom && column >= left && column <= right;

/** By which a cell is known in a set. */
export const cellKey = (sheet: number, row: number, column: number): string =>
  `${sheet}:${row}:${column}`;

/** A table without its total rows; null where the program that calculates could not take it. */
export function bodyOf({ area, totalRows, hasHeader, headers }: TableContent): Area | null {
  const bottom = area.bottom - totalRows;
  const fits = area.right - area.left + 1 === headers.length;
  return hasHeader && fits && bottom > area.top ? { ...area, bottom } : null;
}

/** Rows of cells that lie under each other with the same ends, as blocks. */
export function blocksOf(
  rows: ReadonlyMap<number, readonly (CellValue | undefined)[]>,
  isTaken: (row: number, column: number) => boolean,
): CellsPlan[] {
  interface Open {
    readonly top: number;
    readonly left: number;
    readonly values: CellValue[][];
  }
  const blocks: CellsPlan[] = [];
  let open = new Map<string, Open>();
  const close = ({ top, left, values }: Open): void =>
    void blocks.push({ kind: "cells", at: cellRef({ row: top, column: left }), values });
  let last = 0;
  for (const [row, cells] of [...rows].sort(([a], [b]) => a - b)) {
    const next = new Map<string, Open>();
    let run: CellValue[] = [];
    let left = 0;
    const end = (): void => {
      if (run.length === 0) return;
      const key = `${left}:${run.length}`;
      const above = row === last + 1 ? open.get(key) : undefined;
      if (above) {
        above.values.push(run);
        open.delete(key);
        next.set(key, above);
      } else next.set(key, { top: row, left, values: [run] });
      run = [];
    };
    cells.forEach((value, column) => {
      if (value === undefined || value === "" || isTaken(row, column)) return;
      if (run.length > 0 && column !== left + run.length) end();
      if (run.length === 0) left = column;
      run.push(value);
    });
    end();
    for (const each of open.values()) close(each);
    open = next;
    last = row;
  }
  for (const each of open.values()) close(each);
  return blocks;
}

function tablePlan(sheet: SheetContent, table: TableContent, body: Area): TablePlan {
  const { top, left, bottom } = body;
  return {
    kind: "table",
    name: table.name,
    at: cellRef({ row: top, column: left }),
    columns: table.headers.map((header) => ({ header, width: 12 })),
    rows: Array.from({ length: bottom - top }, (_, down) =>
      table.headers.map((__, right) => sheet.rows.get(top + 1 + down)?.[left + right] ?? ""),
    ),
  };
}

/**
 * @param held formulas that go in as the values stored beside them, by `cellKey`
 */
export function plansToCalculate(
  { sheets, names }: WorkbookContent,
  held: ReadonlyMap<string, CellValue>,
): Blueprint {
  const plans = sheets.map((sheet, index) => {
    const isHeld = ({ row, column }: FormulaContent): boolean =>
      held.has(cellKey(index, row, column));
    const live = sheet.formulas.filter((formula) => !isHeld(formula));
    const arrays = live.flatMap(({ array }) => array ?? []);
    const starts = new Set(live.map(({ row, column }) => cellKey(index, row, column)));
    const tables = sheet.tables.flatMap((table) => {
      const body = bodyOf(table);
      return body ? [{ table, body }] : [];
    });
    const taken = (row: number, column: number): boolean =>
      starts.has(cellKey(index, row, column)) ||
      tables.some(({ body }) => inside(body, row, column)) ||
      arrays.some((area) => inside(area, row, column));
    const rows = new Map([...sheet.rows].map(([row, cells]) => [row, [...cells]]));
    for (const { row, column } of sheet.formulas) {
      const value = held.get(cellKey(index, row, column));
      if (value === undefined) continue;
      if (!rows.has(row)) rows.set(row, []);
      rows.get(row)![column] = value;
    }
    const filled = { ...sheet, rows };
    const formulas = live.map(({ row, column, text }): FormulaPlan => ({
      kind: "formula",
      at: cellRef({ row, column }),
      formula: typedFormula(text),
    }));
    return {
      name: sheet.part.name,
      blocks: [
        ...tables.map(({ table, body }) => tablePlan(filled, table, body)),
        ...blocksOf(rows, taken),
        ...formulas,
      ],
    };
  });
  return { sheets: plans, names: names.flatMap((name) => namePlan(name, sheets)) };
}

/** Names that spreadsheets make for themselves begin so. */
const OWN_NAME = /^_xl/i;

function namePlan(
  { name, refersTo, sheetIndex }: WorkbookContent["names"][number],
  sheets: readonly SheetContent[],
): NamePlan[] {
  if (OWN_NAME.test(name) || refersTo === "" || refersTo.includes("#REF!")) return [];
  const sheet = sheetIndex === undefined ? undefined : sheets[sheetIndex]?.part.name;
  if (sheetIndex !== undefined && sheet === undefined) return [];
  return [{ name, refersTo: typedFormula(refersTo), ...(sheet === undefined ? {} : { sheet }) }];
}
