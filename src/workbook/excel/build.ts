/** Makes what a workbook lacks of the blueprint, and never touches what is there. */
import { areaRef } from "../a1";
import { blockArea } from "../blueprint/blockArea";
import type { Blueprint, SheetPlan } from "../blueprint/types";
import { PortError, type BuildReport } from "../port";
import { sentences } from "../sentences";
import { drawCharts } from "./drawCharts";
import { renderContent, renderFormulas, renderLooks, type Block } from "./renderBlocks";
import { renderSheet, setUpPrint } from "./renderSheet";
import { inExcel, syncQuietly } from "./session";
import { wholeOrNone } from "./wholeOrNone";

/** A sheet of the blueprint and those of its blocks that are to be made. */
interface Part {
  readonly plan: SheetPlan;
  readonly isNew: boolean;
  readonly blocks: readonly Block[];
}

interface Names {
  readonly sheets: ReadonlySet<string>;
  readonly tables: ReadonlySet<string>;
  readonly names: ReadonlySet<string>;
}

const lower = (items: readonly { readonly name: string }[]): Set<string> =>
  new Set(items.map(({ name }) => name.toLowerCase()));

export async function namesIn(context: Excel.RequestContext): Promise<Names> {
  const { worksheets, tables, names, protection } = context.workbook;
  for (const collection of [worksheets, tables, names]) collection.load("items/name");
  protection.load("protected");
  await context.sync();
  if (protection.protected) throw new PortError("protected", sentences.bookProtected);
  return {
    sheets: lower(worksheets.items),
    tables: lower(tables.items),
    names: lower(names.items),
  };
}

export async function buildMissing(
  context: Excel.RequestContext,
  { sheets }: Blueprint,
): Promise<BuildReport> {
  const there = await namesIn(context);
  const made: string[] = [];
  const kept: string[] = [];
  const isThere = ({ kind, name = "" }: Block): boolean =>
    (kind === "table" ? there.tables : there.names).has(name.toLowerCase());
  const parts = sheets.map((plan): Part => {
    const isNew = !there.sheets.has(plan.name.toLowerCase());
    const missing = plan.blocks.filter((block) => block.name === undefined || !isThere(block));
    kept.push(...(isNew ? [] : [plan.name]));
    kept.push(...plan.blocks.filter((block) => !missing.includes(block)).map(({ name }) => name!));
    // A block without a name is never put into a sheet that is there: its owner may have removed it.
    return { plan, isNew, blocks: isNew ? missing : missing.filter(({ name }) => name) };
  });
  const free = await withRoom(context, parts);
  const noRoom = missingFrom(parts, free);
  for (const { plan, isNew, blocks } of free)
    made.push(...(isNew ? [plan.name] : []), ...blocks.flatMap(({ name }) => name ?? []));
  if (made.length === 0) return { made, kept };

  await wholeOrNone(
    () => render(context, free),
    (again) => remove(again, free, there),
  );
  const drawn = free.filter(({ isNew }) => isNew).map(({ plan }) => plan);
  const lacking = [...noRoom, ...(await dressUp(drawn))];
  return { made, kept, ...(lacking.length > 0 ? { lacking } : {}) };
}

/** Parts without the blocks whose place is taken on a sheet that is there. */
async function withRoom(context: Excel.RequestContext, parts: readonly Part[]): Promise<Part[]> {
  const places = parts
    .filter(({ isNew }) => !isNew)
    .flatMap(({ plan, blocks }) =>
      blocks.map((block) => {
        const sheet = context.workbook.worksheets.getItem(plan.name);
        return { block, range: sheet.getRange(areaRef(blockArea(block))).load("formulas") };
      }),
    );
  if (places.length > 0) await context.sync();
  const taken = new Set(
    places
      .filter(({ range }) =>
        range.formulas.some((row: unknown[]) => row.some((cell) => cell !== "")),
      )
      .map(({ block }) => block),
  );
  return parts.map((part) => ({
    ...part,
    blocks: part.blocks.filter((block) => !taken.has(block)),
  }));
}

/**
 * Sentences about names that found no room. A table that finds none stops everything, as Excel
 * takes no formula that asks for it.
 */
function missingFrom(wanted: readonly Part[], free: readonly Part[]): string[] {
  return wanted.flatMap(({ plan, blocks }, index) =>
    blocks
      .filter((block) => !free[index]!.blocks.includes(block))
      .map(({ kind, name = "" }) => {
        const sentence = sentences.placeTaken(name, plan.name);
        if (kind === "table") throw new PortError("invalid", sentence);
        return sentence;
      }),
  );
}

/** All sheets first, then what formulas may name, then the formulas: Excel refuses them otherwise. */
export async function render(
  context: Excel.RequestContext,
  parts: readonly Part[],
  afterwards: () => void = () => {},
): Promise<void> {
  const { worksheets } = context.workbook;
  const rendered = parts.map((part) => ({
    ...part,
    sheet: part.isNew ? worksheets.add(part.plan.name) : worksheets.getItem(part.plan.name),
  }));
  for (const { sheet, plan, blocks } of rendered)
    for (const block of blocks) renderContent(context, sheet, plan.name, block);
  for (const { sheet, plan, blocks, isNew } of rendered) {
    if (isNew) renderSheet(sheet, plan);
    for (const block of blocks) renderLooks(sheet, block, isNew);
  }
  for (const { sheet, blocks } of rendered)
    for (const block of blocks) renderFormulas(sheet, block);
  afterwards();
  await syncQuietly(context);
}

/** Takes away what a failed attempt made: its sheets, and its blocks on sheets that were there. */
async function remove(
  context: Excel.RequestContext,
  parts: readonly Part[],
  before: Names,
): Promise<void> {
  const { worksheets, tables, names } = context.workbook;
  for (const collection of [worksheets, tables, names]) collection.load("items/name");
  await context.sync();
  for (const name of names.items) if (!before.names.has(name.name.toLowerCase())) name.delete();
  for (const table of tables.items)
    if (!before.tables.has(table.name.toLowerCase())) table.delete();
  for (const { plan, isNew, blocks } of parts) {
    const sheet = worksheets.items.find(
      ({ name }) => name.toLowerCase() === plan.name.toLowerCase(),
    );
    if (!sheet) continue;
    if (isNew) sheet.delete();
    else for (const block of blocks) wipe(sheet.getRange(areaRef(blockArea(block))));
  }
}

function wipe(range: Excel.Range): void {
  range.clear();
  range.dataValidation.clear();
  range.conditionalFormats.clearAll();
}

/**
 * Print set-up and charts, each in a request of its own: a machine without a printer refuses the
 * first, and a sheet without them is still whole. Answers what could not be had.
 */
export async function dressUp(plans: readonly SheetPlan[]): Promise<string[]> {
  const lacking: string[] = [];
  try {
    await inExcel("Setting up the print", async (context) => {
      for (const { name, print } of plans)
        if (print) setUpPrint(context.workbook.worksheets.getItem(name), print);
      await context.sync();
    });
  } catch {
    lacking.push(sentences.noPrint);
  }
  return [...lacking, ...(await drawCharts(plans))];
}
