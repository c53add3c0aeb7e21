/** Makes what a workbook lacks of the blueprint, and never touches what is there. */
import { areaRef } from "../a1";
import { blockArea } from "../blueprint/parts";
import type { Blueprint } from "../blueprint/types";
import { type BuildReport, PortError } from "../port";
import { sentences } from "../sentences";
import { type Block, dressUp, type Part, render } from "./render";
import { wholeOrNone } from "./session";

/** Names that a workbook has in use, in lower case. */
export interface Names {
  readonly sheets: ReadonlySet<string>;
  readonly tables: ReadonlySet<string>;
  readonly names: ReadonlySet<string>;
}

const lower = (items: readonly { readonly name: string }[]): Set<string> =>
  new Set(items.map(({ name }) => name.toLowerCase()));

/** Reads them, with one request. A protected workbook takes no sheet, which is said at once. */
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

/** Takes away what a failed attempt made: its sheets, and its blocks on sheets that were there. */
export async function removeMade(
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
    (again) => removeMade(again, free, there),
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
