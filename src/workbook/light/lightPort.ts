import { cellRef, quotedSheet } from "../a1";
import type { Blueprint, SheetPlan } from "../blueprint/types";
import {
  type BuildReport,
  type CellValue,
  type FormulaCell,
  PortError,
  type Progress,
  type Row,
  type RowAt,
  type TableData,
  type WorkbookPort,
} from "../port";
import { sentences } from "../sentences";
import {
  addMissingBlock,
  hasBlock,
  type LightBook,
  rangeAt,
  readRange,
  removeSheet,
  sheetNamed,
  sheetOf,
  TableOfBook,
  writeRange,
} from "./lightBook";

/** One change of the workbook, as plain data: kept, it can be made again. */
export type LightChange =
  | { readonly kind: "add"; readonly table: string; readonly rows: readonly Row[] }
  | {
      readonly kind: "change";
      readonly table: string;
      readonly changes: readonly (RowAt & { readonly becomes: Row })[];
    }
  | { readonly kind: "remove"; readonly table: string; readonly rows: readonly RowAt[] }
  | {
      readonly kind: "write";
      readonly ref: string;
      readonly values: readonly (readonly CellValue[])[];
    }
  | { readonly kind: "build"; readonly blueprint: Blueprint }
  | { readonly kind: "replace"; readonly plan: SheetPlan };

/**
 * Makes a change. All of it or none: what it cannot do it refuses before anything is written.
 *
 * @returns Indexes of added rows, the report of building, else nothing.
 */
export function makeChange(book: LightBook, change: LightChange): number[] | BuildReport | void {
  switch (change.kind) {
    case "add":
      return TableOfBook.get(book, change.table).add(change.rows);
    case "change":
      return TableOfBook.get(book, change.table).change(change.changes);
    case "remove":
      return TableOfBook.get(book, change.table).remove(change.rows);
    case "write":
      return writeRange(book, change.ref, change.values);
    case "build":
      return buildMissing(book, change.blueprint);
    case "replace":
      return replaceSheet(book, change.plan);
  }
}

function buildMissing(book: LightBook, { sheets }: Blueprint): BuildReport {
  const made: string[] = [];
  const kept: string[] = [];
  for (const plan of sheets) {
    const there = sheetNamed(book, plan.name);
    const missing = plan.blocks.filter((block) => !hasBlock(book, block));
    kept.push(
      ...(there ? [plan.name] : []),
      ...plan.blocks.flatMap((block) => (missing.includes(block) ? [] : (block.name ?? []))),
    );
    if (there) {
      for (const block of missing)
        if (block.name !== undefined && addMissingBlock(book, there, block)) made.push(block.name);
      continue;
    }
    const { sheet, names } = sheetOf({ ...plan, blocks: missing });
    book.sheets.push(sheet);
    book.names.push(...names);
    made.push(plan.name, ...missing.flatMap(({ name }) => name ?? []));
  }
  return { made, kept };
}

function replaceSheet(book: LightBook, plan: SheetPlan): void {
  const at = removeSheet(book, plan.name);
  const { sheet, names } = sheetOf(plan);
  book.sheets.splice(at < 0 ? book.sheets.length : at, 0, sheet);
  book.names.push(...names);
}

/** Where a workbook is kept. */
export interface Keeper {
  /** Keeps a change for good; where it cannot, it throws. */
  keep(change: LightChange): Promise<void>;
  /** The workbook with all the changes that were kept. */
  load(): Promise<LightBook>;
}

/**
 * The port over a workbook in memory: tables, ranges and settings, no calculation. Each change is kept
 * for good before the call that made it ends; one that cannot be kept is not made.
 */
export class LightPort implements WorkbookPort {
  readonly kind = "light";
  readonly undoable = false;
  private readonly listeners = new Set<() => void>();

  constructor(
    private current: LightBook,
    private readonly keeper: Keeper,
  ) {}

  get book(): LightBook {
    return this.current;
  }

  /** Goes on with another workbook. */
  replaceBook(book: LightBook): void {
    this.current = book;
    this.tell();
  }

  async sheetNames(): Promise<string[]> {
    return this.current.sheets.map(({ name }) => name);
  }

  async tableNames(): Promise<string[]> {
    return this.current.sheets.flatMap(({ tables }) => tables.map(({ name }) => name));
  }

  async readTable(name: string): Promise<TableData | null> {
    return TableOfBook.find(this.current, name)?.read() ?? null;
  }

  async readRange(ref: string): Promise<CellValue[][] | null> {
    const range = rangeAt(this.current, ref);
    return range && readRange(range);
  }

  async addRows(table: string, rows: readonly Row[]): Promise<number[]> {
    return (await this.make({ kind: "add", table, rows })) as number[];
  }

  async changeRows(
    table: string,
    changes: readonly (RowAt & { readonly becomes: Row })[],
  ): Promise<void> {
    await this.make({ kind: "change", table, changes });
  }

  async removeRows(table: string, rows: readonly RowAt[]): Promise<void> {
    await this.make({ kind: "remove", table, rows });
  }

  async writeRange(ref: string, values: readonly (readonly CellValue[])[]): Promise<void> {
    await this.make({ kind: "write", ref, values });
  }

  async build(blueprint: Blueprint): Promise<BuildReport> {
    return (await this.make({ kind: "build", blueprint })) as BuildReport;
  }

  async replaceSheet(plan: SheetPlan): Promise<void> {
    await this.make({ kind: "replace", plan });
  }

  async ourFormulas(): Promise<FormulaCell[]> {
    return this.current.sheets.flatMap(({ name, formulas }) =>
      formulas
        .filter(({ text }) => /\bCARRY\.[A-Z]+\(/i.test(text))
        .map(({ row, column, text }) => ({
          ref: `${quotedSheet(name)}!${cellRef({ row, column })}`,
          formula: text,
        })),
    );
  }

  /** Nothing to write: formulas are kept as they are, for a program that works them out. */
  async repairFormulas(progress?: Progress): Promise<number> {
    const { length } = await this.ourFormulas();
    progress?.(length, length);
    return length;
  }

  async recalculate(): Promise<void> {
    throw new PortError("unsupported", sentences.fileCannotCalculate);
  }

  onChange(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => void this.listeners.delete(listener);
  }

  async show(ref: string): Promise<void> {
    if (!rangeAt(this.current, ref)) throw new PortError("missing", sentences.noRange(ref));
  }

  private async make(change: LightChange): Promise<number[] | BuildReport | void> {
    const answer = makeChange(this.current, change);
    try {
      await this.keeper.keep(change);
    } catch (error) {
      this.current = await this.keeper.load();
      throw error;
    }
    this.tell();
    return answer;
  }

  private tell(): void {
    if (this.listeners.size > 0)
      queueMicrotask(() => this.listeners.forEach((listener) => listener()));
  }
}
