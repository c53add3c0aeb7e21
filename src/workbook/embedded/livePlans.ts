/** The workbook as it stands, in the notation of the blueprint, for whoever writes it to a file. */
import type { IRange, Worksheet } from "@univerjs/core";
import { FormulaDataModel } from "@univerjs/engine-formula";
import { areaRef, readArea } from "../a1";
import type { CellsPlan, FormulaPlan, SheetPlan, TablePlan } from "../blueprint/types";
import type { Engine } from "./engine";
import { areaOf, engineRange, type Grid, oneCell } from "./grid";
import { type Block, blockRange } from "./renderSheet";
import type { FoundTable, Tables } from "./tables";

const cellName = (row: number, column: number): string => areaRef(areaOf(oneCell(row, column)));

/** One sheet: what its plan says of looks, what its cells say of content. */
class LiveSheet {
  private readonly covered = new Set<string>();
  private readonly ownTables: FoundTable[];

  constructor(
    private readonly engine: Engine,
    private readonly grid: Grid,
    private readonly sheet: Worksheet,
    tables: Tables,
  ) {
    this.ownTables = tables.all().filter((table) => table.sheet === sheet);
  }

  plan(original: SheetPlan | undefined): SheetPlan {
    const known = (original?.blocks ?? []).flatMap((block) => this.asItStands(block));
    for (const { from } of original?.charts ?? []) this.cover(engineRange(readArea(from)!));
    const others = this.ownTables
      .filter(({ name }) => !known.some((block) => block.name === name))
      .map((table) => this.table(table));
    const blocks = [...known, ...others, ...this.rest()];
    return { ...original, name: this.sheet.getName(), blocks };
  }

  private asItStands(block: Block): Block[] {
    if (block.kind === "table") {
      const table = this.ownTables.find(({ name }) => name === block.name);
      return table ? [this.table(table, block)] : [];
    }
    const range = blockRange(block);
    if (block.kind === "cells") return [this.cells(block, range)];
    if (this.grid.formula(this.sheet, range.startRow, range.startColumn) !== block.formula)
      return [];
    this.cover(oneCell(range.startRow, range.startColumn));
    return [block];
  }

  private table({ name, range, headers }: FoundTable, plan?: TablePlan): TablePlan {
    this.cover(range);
    const body = { ...range, startRow: range.startRow + 1 };
    return {
      kind: "table",
      name,
      at: cellName(range.startRow, range.startColumn),
      columns: headers.map(
        (header) =>
          plan?.columns.find((column) => column.header === header) ?? { header, width: 12 },
      ),
      rows: this.grid.values({ sheet: this.sheet, range: body }),
    };
  }

  /** Formulas that came into the place of values are left to the rest. */
  private cells(block: CellsPlan, range: IRange): CellsPlan {
    const values = block.values.map((row, down) =>
      row.map((_, right) => {
        const [at, column] = [range.startRow + down, range.startColumn + right];
        if (this.grid.formula(this.sheet, at, column) !== null) return "";
        this.cover(oneCell(at, column));
        return this.grid.value(this.sheet, at, column);
      }),
    );
    return { ...block, values };
  }

  /** Cells that no plan knows of. */
  private rest(): Block[] {
    const blocks: Block[] = [];
    this.sheet.getCellMatrix().forValue((row, column) => {
      if (this.covered.has(`${row}:${column}`)) return;
      const formula = this.grid.formula(this.sheet, row, column);
      const value = this.grid.value(this.sheet, row, column);
      const isFree = this.grid.isFree({ sheet: this.sheet, range: oneCell(row, column) });
      if (formula !== null) blocks.push(this.formula(row, column, formula));
      else if (!isFree)
        blocks.push({ kind: "cells", at: cellName(row, column), values: [[value]] });
    });
    return blocks;
  }

  private formula(row: number, column: number, formula: string): FormulaPlan {
    const { injector, unitId } = this.engine;
    const spills = injector.get(FormulaDataModel).getArrayFormulaRange()[unitId];
    const range = spills?.[this.sheet.getSheetId()]?.[row]?.[column];
    const plan: FormulaPlan = { kind: "formula", at: cellName(row, column), formula };
    if (!range) return plan;
    const rows = range.endRow - range.startRow + 1;
    const columns = range.endColumn - range.startColumn + 1;
    return { ...plan, spill: { rows, columns, header: false } };
  }

  private cover({ startRow, endRow, startColumn, endColumn }: IRange): void {
    for (let row = startRow; row <= endRow; row++)
      for (let column = startColumn; column <= endColumn; column++)
        this.covered.add(`${row}:${column}`);
  }
}

export const livePlans = (engine: Engine, grid: Grid, tables: Tables): SheetPlan[] =>
  engine.workbook
    .getSheets()
    .map((sheet) =>
      new LiveSheet(engine, grid, sheet, tables).plan(engine.plans.get(sheet.getSheetId())),
    );
