/** Makes what a workbook lacks of the blueprint, and never touches what is there. */
import { areaRef } from "../a1";
import { blockArea } from "../blueprint/blockArea";
import type { Blueprint } from "../blueprint/types";
import { PortError, type BuildReport } from "../port";
import { sentences } from "../sentences";
import { namesIn } from "./namesIn";
import { removeMade } from "./removeMade";
import { dressUp, render, type Part } from "./render";
import type { Block } from "./renderBlocks";
import { wholeOrNone } from "./wholeOrNone";

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
