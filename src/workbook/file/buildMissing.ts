import type { Workbook, Worksheet } from "@cj-tech-master/excelts";
import type { Area } from "../a1";
import { blockArea } from "../blueprint/parts";
import type { Blueprint, SheetPlan } from "../blueprint/types";
import type { BuildReport } from "../port";
import { fromFile, sheetNamed } from "./cellValues";
import { FileTable } from "./fileTable";
import { renderBlock, renderLists, renderSheets } from "./render";

type Block = SheetPlan["blocks"][number];

const isThere = (book: Workbook, block: Block): boolean =>
  block.kind === "table"
    ? FileTable.find(book, block.name) !== null
    : book.definedNames
        .getAllNames()
        .some(({ name }) => name.toLowerCase() === block.name?.toLowerCase());

function isFree(sheet: Worksheet, { top, left, bottom, right }: Area): boolean {
  for (let row = top; row <= bottom; row++)
    for (let column = left; column <= right; column++)
      if (fromFile(sheet.getCell(row, column).value) !== "") return false;
  return true;
}

/**
 * Makes the sheets of a blueprint that a workbook lacks, and on sheets that are there the named
 * blocks that it lacks, where their place is free. Everything else is left as it is.
 */
export function buildMissing(book: Workbook, { sheets }: Blueprint): BuildReport {
  const made: string[] = [];
  const kept: string[] = [];
  const lacking = (plan: SheetPlan): SheetPlan["blocks"] =>
    plan.blocks.filter((block) => {
      if (block.name === undefined || !isThere(book, block)) return true;
      kept.push(block.name);
      return false;
    });
  const newSheets = sheets
    .filter(({ name }) => !sheetNamed(book, name))
    .map((plan) => ({ ...plan, blocks: lacking(plan) }));
  for (const plan of sheets) {
    const sheet = sheetNamed(book, plan.name);
    if (!sheet) continue;
    kept.push(plan.name);
    for (const block of lacking(plan)) {
      if (block.name === undefined || !isFree(sheet, blockArea(block))) continue;
      renderBlock(book, sheet, block);
      renderLists(sheet, block);
      made.push(block.name);
    }
  }
  renderSheets(book, newSheets);
  for (const { name, blocks } of newSheets)
    made.push(name, ...blocks.flatMap((block) => block.name ?? []));
  return { made, kept };
}
