/** Reading many tables and ranges with one request. */
import type { CellValue, TableData, Together } from "../port";
import { valuesOf, VALUES } from "./cells";
import { asData, loadTable } from "./changeRows";
import { rangeOf } from "./formulas";
import { inExcel, isNoRange } from "./session";

const lower = (items: readonly { readonly name: string }[]): Set<string> =>
  new Set(items.map(({ name }) => name.toLowerCase()));

/**
 * A request fails as a whole where it asks for a table or name that is not there. So what was there
 * last is asked for, beside the names of all; only where those differ is there a second request.
 */
export class ReadTogether {
  /** Tables and names at the last reading; null before it. */
  private known: { readonly tables: Set<string>; readonly names: Set<string> } | null = null;

  /** `readOne` reads a range alone, null where there is none. */
  constructor(private readonly readOne: (ref: string) => Promise<CellValue[][] | null>) {}

  async read(tables: readonly string[], ranges: readonly string[]): Promise<Together> {
    try {
      return await inExcel("Reading the workbook", (context) => this.ask(context, tables, ranges));
    } catch (error) {
      if (!isNoRange(error)) throw error;
      // Something went away, or a name stands for no range: names first, and each range alone.
      this.known = null;
      const read = await inExcel("Reading the workbook", (context) =>
        this.ask(context, tables, []),
      );
      return { ...read, ranges: await Promise.all(ranges.map((ref) => this.readOne(ref))) };
    }
  }

  private async ask(
    context: Excel.RequestContext,
    tables: readonly string[],
    ranges: readonly string[],
  ): Promise<Together> {
    const { workbook } = context;
    workbook.tables.load("items/name");
    workbook.names.load("items/name");
    if (!this.known) await context.sync();
    const asked = this.known ?? this.namesIn(workbook);
    const found = tables.map((name) =>
      asked.tables.has(name.toLowerCase()) ? loadTable(context, name) : null,
    );
    const cells = ranges.map((ref) =>
      asked.names.has(ref.toLowerCase()) ? rangeOf(context, ref).load(VALUES) : null,
    );
    await context.sync();
    const now = (this.known = this.namesIn(workbook));
    const isNew =
      tables.some(
        (name) => now.tables.has(name.toLowerCase()) !== asked.tables.has(name.toLowerCase()),
      ) ||
      ranges.some((ref) => now.names.has(ref.toLowerCase()) !== asked.names.has(ref.toLowerCase()));
    if (isNew) return this.ask(context, tables, ranges);
    return {
      tables: found.map((table): TableData | null => (table ? asData(table()) : null)),
      ranges: cells.map((range) => (range ? valuesOf(range) : null)),
      tableNames: workbook.tables.items.map(({ name }) => name),
    };
  }

  private namesIn({ tables, names }: Excel.Workbook): {
    readonly tables: Set<string>;
    readonly names: Set<string>;
  } {
    return { tables: lower(tables.items), names: lower(names.items) };
  }
}
