import { readSpot, type Area } from "../a1";
import type { SheetPlan, TablePlan } from "./types";

type Block = SheetPlan["blocks"][number];

/** Body rows that a table starts with. */
export const bodyRows = (plan: TablePlan): number => Math.max(plan.rows.length, plan.least ?? 0, 1);

function area(at: string, rows: number, columns: number): Area {
  const spot = readSpot(at);
  if (!spot) throw new RangeError(`The blueprint names no cell: ${at}`);
  const { row, column } = spot;
  return { top: row, left: column, bottom: row + rows - 1, right: column + columns - 1 };
}

/** Cells that a block fills or keeps free. */
export function blockArea(block: Block): Area {
  if (block.kind === "table") return area(block.at, bodyRows(block) + 1, block.columns.length);
  if (block.kind === "formula")
    return area(block.at, block.spill?.rows ?? 1, block.spill?.columns ?? 1);
  return area(block.at, block.values.length, Math.max(...block.values.map((row) => row.length)));
}
