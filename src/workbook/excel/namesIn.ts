import { PortError } from "../port";
import { sentences } from "../sentences";

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
