import { quotedSheet } from "../a1";
import type { SheetPlan } from "../blueprint/types";
import { namesIn } from "./build";
import { dressUp, render } from "./render";
import { wholeOrNone, type Work } from "./session";

const ASIDE = " (old)";
/** Sheets have names of up to 31 letters. */
const asideSheet = (name: string): string => `${name.slice(0, 31 - ASIDE.length)}${ASIDE}`;
const asideTable = (name: string): string => `${name}_old`;

interface Old {
  readonly position: number;
  readonly tables: readonly string[];
  readonly names: readonly { readonly name: string; readonly formula: string }[];
  readonly active: boolean;
}

/**
 * Makes a sheet anew in the place of the old one. The old one is put aside first and deleted last,
 * so that a failure on the way leaves it as it was.
 */
export const replaceSheet =
  (plan: SheetPlan): Work<void> =>
  async (context) => {
    const there = await namesIn(context);
    const old = there.sheets.has(plan.name.toLowerCase()) ? await oldSheet(context, plan) : null;
    await wholeOrNone(
      async () => {
        if (old) putAside(context, plan.name, old);
        const sheets = context.workbook.worksheets;
        const blocks = plan.blocks;
        await render(context, [{ plan, isNew: true, blocks }], () => {
          if (!old) return;
          const made = sheets.getItem(plan.name);
          made.position = old.position;
          if (old.active) made.activate();
          sheets.getItem(asideSheet(plan.name)).delete();
        });
      },
      (again) => bringBack(again, plan, old),
    );
    await dressUp([plan]);
  };

async function oldSheet(context: Excel.RequestContext, { name }: SheetPlan): Promise<Old> {
  const sheet = context.workbook.worksheets.getItem(name);
  const active = context.workbook.worksheets.getActiveWorksheet();
  const { names } = context.workbook;
  sheet.load("position");
  sheet.tables.load("items/name");
  names.load("items/name,items/formula");
  active.load("name");
  await context.sync();
  const place = `=${quotedSheet(name)}!`.toLowerCase();
  return {
    position: sheet.position,
    tables: sheet.tables.items.map((table) => table.name),
    names: names.items
      .filter(({ formula }) => String(formula).toLowerCase().startsWith(place))
      .map(({ name: own, formula }) => ({ name: own, formula: String(formula) })),
    active: active.name.toLowerCase() === name.toLowerCase(),
  };
}

/** Frees the names of the sheet, its tables and its ranges for the new ones. */
function putAside(context: Excel.RequestContext, name: string, { tables, names }: Old): void {
  const { workbook } = context;
  for (const table of tables) workbook.tables.getItem(table).name = asideTable(table);
  for (const { name: own } of names) workbook.names.getItem(own).delete();
  workbook.worksheets.getItem(name).name = asideSheet(name);
}

async function bringBack(
  context: Excel.RequestContext,
  { name }: SheetPlan,
  old: Old | null,
): Promise<void> {
  const { worksheets, tables, names } = context.workbook;
  for (const collection of [worksheets, tables, names]) collection.load("items/name");
  await context.sync();
  const has = (items: readonly { readonly name: string }[], wanted: string): boolean =>
    items.some((item) => item.name.toLowerCase() === wanted.toLowerCase());
  const aside = has(worksheets.items, asideSheet(name));
  if (has(worksheets.items, name) && (aside || !old)) worksheets.getItem(name).delete();
  if (!old) return;
  if (aside) worksheets.getItem(asideSheet(name)).name = name;
  for (const table of old.tables)
    if (has(tables.items, asideTable(table))) tables.getItem(asideTable(table)).name = table;
  for (const { name: own, formula } of old.names) {
    if (has(names.items, own)) names.getItem(own).delete();
    names.add(own, formula);
  }
}
