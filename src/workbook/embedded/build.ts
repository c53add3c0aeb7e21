/** Makes sheets, tables, names, lists and bars of the blueprint in the embedded workbook. */
import { generateRandomId, type IRange, type Worksheet } from "@univerjs/core";
import type { SheetPlan } from "../blueprint/types";
import {
  addBar,
  addList,
  addName,
  addSheet,
  type Change,
  removeName,
  removeSheet,
  setCells,
} from "./changes";
import { addTable, removeTable, type Tables } from "./tables";
import type { Engine } from "./engine";
import type { Grid } from "./grid";
import {
  type Block,
  blockRange,
  renderBlocks,
  type RenderedBlocks,
  renderSheet,
} from "./renderSheet";

const nameOf = (block: Block): string | undefined => block.name;

/** Names by which a report tells of a sheet: its own, and those of its tables and named blocks. */
export const namesOf = (plan: SheetPlan): string[] => [
  plan.name,
  ...plan.blocks.flatMap((block) => nameOf(block) ?? []),
];

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
  engine.plans.set(sheet.id, plan);
  return [addSheet(engine, index, sheet), ...furnish(engine, sheet.id, plan.name, blocks)];
}

/** Takes a sheet away with its tables and names. */
export function razeSheet(engine: Engine, grid: Grid, tables: Tables, sheet: Worksheet): Change[] {
  const own = tables.all().filter((table) => table.sheet === sheet);
  return [
    ...own.map((table) => removeTable(engine, table.id)),
    ...grid.namesOn(sheet).map((id) => removeName(engine, id)),
    removeSheet(engine, sheet.getSheetId()),
  ];
}

/**
 * Tables and named blocks that a sheet lacks and has room for. A block without a name is never put
 * into a sheet that is there: nobody can tell whether its owner removed it.
 */
export function mendSheet(
  engine: Engine,
  grid: Grid,
  tables: Tables,
  sheet: Worksheet,
  plan: SheetPlan,
): { made: string[]; kept: string[]; changes: Change[] } {
  const named = plan.blocks.filter((block) => nameOf(block) !== undefined);
  const isThere = (block: Block): boolean =>
    tables.find(block.name!) !== null ||
    grid.hasName(block.name!) ||
    !grid.isFree({ sheet, range: blockRange(block) });
  const missing = named.filter((block) => !isThere(block));
  const kept = [plan.name, ...named.filter(isThere).map((block) => block.name!)];
  if (missing.length === 0) return { made: [], kept, changes: [] };
  const blocks = renderBlocks(missing);
  const changes = [
    setCells(engine, sheet.getSheetId(), blocks.cells),
    ...furnish(engine, sheet.getSheetId(), sheet.getName(), blocks),
  ];
  return { made: missing.map((block) => block.name!), kept, changes };
}
