/** Makes sheets, tables, names, lists and bars of the blueprint in the embedded workbook. */
import { generateRandomId, type IRange } from "@univerjs/core";
import type { SheetPlan } from "../blueprint/types";
import { addBar, addList, addName, addSheet, addTable, setCells } from "./changes";
import type { Engine } from "./engine";
import { renderBlocks, renderSheet, type RenderedBlocks } from "./renderSheet";
import type { Change } from "./step";

/** What belongs to the cells of a sheet: its tables, names, lists and bars. */
export function furnish(
  engine: Engine,
  sheetId: string,
  sheetName: string,
  { tables, names, lists, bars }: RenderedBlocks,
): Change[] {
  const rangesOf = new Map(lists.map(({ list }) => [list, [] as IRange[]]));
  for (const { list, range } of lists) rangesOf.get(list)!.push(range);
  return [
    ...tables.map((table) => addTable(engine, sheetId, table)),
    ...names.map(({ name, range }) => addName(engine, sheetName, name, range)),
    ...[...rangesOf].map(([list, ranges]) => addList(engine, sheetId, ranges, list)),
    ...bars.map((bar) => addBar(engine, sheetId, bar)),
  ];
}

/** A whole new sheet at a place among the sheets. */
export function raiseSheet(engine: Engine, plan: SheetPlan, index: number): Change[] {
  const { sheet, blocks } = renderSheet(plan, generateRandomId());
  return [addSheet(engine, index, sheet), ...furnish(engine, sheet.id, plan.name, blocks)];
}

/** Blocks that are missing on a sheet that is there. */
export function raiseBlocks(
  engine: Engine,
  sheetId: string,
  sheetName: string,
  missing: SheetPlan["blocks"],
): Change[] {
  const blocks = renderBlocks(missing);
  return [setCells(engine, sheetId, blocks.cells), ...furnish(engine, sheetId, sheetName, blocks)];
}
