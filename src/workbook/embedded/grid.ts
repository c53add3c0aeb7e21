/** Reads cells of the embedded workbook: what is typed, what formulas give, and what they spill. */
import type { ICellData, IRange, Nullable, Worksheet } from "@univerjs/core";
import { FormulaDataModel, IDefinedNamesService } from "@univerjs/engine-formula";
import { readSheetArea } from "../a1";
import type { CellValue } from "../port";
import { isBlankCell, readCell } from "./cells";
import type { Engine } from "./engine";
import { engineRange } from "./ranges";

export interface Place {
  readonly sheet: Worksheet;
  readonly range: IRange;
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

export class Grid {
  private readonly formulas: FormulaDataModel;
  private readonly names: IDefinedNamesService;

  constructor(private readonly engine: Engine) {
    this.formulas = engine.injector.get(FormulaDataModel);
    this.names = engine.injector.get(IDefinedNamesService);
  }

  sheet(name: string): Worksheet | null {
    return this.engine.workbook.getSheets().find((sheet) => same(sheet.getName(), name)) ?? null;
  }

  /** Where a reference with sheet, or a defined name, points; null where nowhere. */
  locate(ref: string): Place | null {
    const there = readSheetArea(ref) ?? readSheetArea(this.nameTarget(ref) ?? "");
    const sheet = there && this.sheet(there.sheet);
    return sheet ? { sheet, range: engineRange(there.area) } : null;
  }

  hasName(name: string): boolean {
    return this.nameTarget(name) !== null;
  }

  /** Ids of the defined names that point into a sheet. */
  namesOn(sheet: Worksheet): string[] {
    return Object.values(this.names.getDefinedNameMap(this.engine.unitId) ?? {})
      .filter((item) => this.locate(item.name)?.sheet === sheet)
      .map((item) => item.id);
  }

  private nameTarget(name: string): string | null {
    const known = Object.values(this.names.getDefinedNameMap(this.engine.unitId) ?? {});
    return known.find((item) => same(item.name, name))?.formulaOrRefString ?? null;
  }

  /** What is stored in a cell, not what a formula elsewhere spilled into it. */
  stored(sheet: Worksheet, row: number, column: number): Nullable<ICellData> {
    return sheet.getCellMatrix().getValue(row, column);
  }

  formula(sheet: Worksheet, row: number, column: number): string | null {
    const cell = this.stored(sheet, row, column);
    if (cell?.f) return cell.f;
    if (!cell?.si) return null;
    const { unitId } = this.engine;
    return this.formulas.getFormulaStringByCell(row, column, sheet.getSheetId(), unitId) ?? null;
  }

  value(sheet: Worksheet, row: number, column: number): CellValue {
    const sheetId = sheet.getSheetId();
    const cell = this.stored(sheet, row, column);
    const spilled = this.formulas.getArrayFormulaCellData()[this.engine.unitId]?.[sheetId];
    const shown = isBlankCell(cell) ? spilled?.[row]?.[column] : cell;
    return readCell(shown, this.engine.faults.at({ sheetId, row, column }));
  }

  values({ sheet, range }: Place): CellValue[][] {
    const rows: CellValue[][] = [];
    for (let row = range.startRow; row <= range.endRow; row++) {
      const values: CellValue[] = [];
      for (let column = range.startColumn; column <= range.endColumn; column++)
        values.push(this.value(sheet, row, column));
      rows.push(values);
    }
    return rows;
  }

  /** Whether nothing is stored in any cell of a range. */
  isFree({ sheet, range }: Place): boolean {
    for (let row = range.startRow; row <= range.endRow; row++)
      for (let column = range.startColumn; column <= range.endColumn; column++)
        if (!isBlankCell(this.stored(sheet, row, column))) return false;
    return true;
  }
}
