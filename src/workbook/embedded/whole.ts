/** The workbook of the page as a whole, out of the engine and into it, without loss. */
import {
  BooleanNumber,
  BorderStyleTypes,
  type DataValidationErrorStyle,
  type DataValidationOperator,
  DataValidationRenderMode,
  type DataValidationType,
  generateRandomId,
  HorizontalAlign,
  type IBorderStyleData,
  type ICellData,
  type IRange,
  type ISheetDataValidationRule,
  type IStyleData,
  type IWorksheetData,
  type Nullable,
  VerticalAlign,
  type Worksheet,
  WrapStrategy,
} from "@univerjs/core";
import { AddDataValidationMutation, RemoveDataValidationMutation } from "@univerjs/data-validation";
import { FormulaDataModel, IDefinedNamesService } from "@univerjs/engine-formula";
import { SCOPE_WORKBOOK_VALUE_DEFINED_NAME } from "@univerjs/sheets";
import {
  CFRuleType,
  ConditionalFormattingRuleModel,
} from "@univerjs/sheets-conditional-formatting";
import { SheetDataValidationModel } from "@univerjs/sheets-data-validation";
import { readArea } from "../a1";
import type { NamePlan } from "../blueprint/types";
import type {
  CellLook,
  Edge,
  WholeBook,
  WholeCell,
  WholeCells,
  WholeLine,
  WholeRule,
  WholeSheet,
} from "../wholeBook";
import {
  addBar,
  addNamePlan,
  addSheet,
  change,
  type Change,
  removeName,
  removeSheet,
  styleOf as styleOfRole,
} from "./changes";
import type { Engine } from "./engine";
import { areaOf, engineRange, formulaCell, type Grid, readCell, writtenCell } from "./grid";
import { chartNote } from "./renderSheet";
import { addTable, removeTable, type Tables } from "./tables";

// Looks.

/** Words of the file format for the engine's border lines, by the engine's number. */
const EDGES: readonly (readonly [BorderStyleTypes, string])[] = [
  [BorderStyleTypes.THIN, "thin"],
  [BorderStyleTypes.HAIR, "hair"],
  [BorderStyleTypes.DOTTED, "dotted"],
  [BorderStyleTypes.DASHED, "dashed"],
  [BorderStyleTypes.DASH_DOT, "dashDot"],
  [BorderStyleTypes.DASH_DOT_DOT, "dashDotDot"],
  [BorderStyleTypes.DOUBLE, "double"],
  [BorderStyleTypes.MEDIUM, "medium"],
  [BorderStyleTypes.MEDIUM_DASHED, "mediumDashed"],
  [BorderStyleTypes.MEDIUM_DASH_DOT, "mediumDashDot"],
  [BorderStyleTypes.MEDIUM_DASH_DOT_DOT, "mediumDashDotDot"],
  [BorderStyleTypes.SLANT_DASH_DOT, "slantDashDot"],
  [BorderStyleTypes.THICK, "thick"],
];
const ACROSS: readonly (readonly [HorizontalAlign, CellLook["across"] & string])[] = [
  [HorizontalAlign.LEFT, "left"],
  [HorizontalAlign.CENTER, "center"],
  [HorizontalAlign.RIGHT, "right"],
  [HorizontalAlign.JUSTIFIED, "justify"],
  [HorizontalAlign.DISTRIBUTED, "distributed"],
];
const DOWN: readonly (readonly [VerticalAlign, CellLook["down"] & string])[] = [
  [VerticalAlign.TOP, "top"],
  [VerticalAlign.MIDDLE, "center"],
];

const wordFor = <Key, Word>(
  pairs: readonly (readonly [Key, Word])[],
  key: unknown,
): Word | undefined => pairs.find(([known]) => known === key)?.[1];
const keyFor = <Key, Word>(
  pairs: readonly (readonly [Key, Word])[],
  word: unknown,
): Key | undefined => pairs.find(([, known]) => known === word)?.[0];

const hexOf = (rgb: Nullable<string>): string | undefined => {
  const [, hex, red, green, blue] =
    /^#?([0-9a-f]{6})$|^rgba?\((\d+),\s*(\d+),\s*(\d+)/i.exec(rgb ?? "") ?? [];
  if (hex !== undefined) return hex.toLowerCase();
  if (red === undefined) return undefined;
  return [red, green!, blue!].map((part) => Number(part).toString(16).padStart(2, "0")).join("");
};

function edgeOf(line: Nullable<IBorderStyleData>): Edge | undefined {
  const kind = line ? wordFor(EDGES, line.s) : undefined;
  if (kind === undefined) return undefined;
  const colour = hexOf(line!.cl?.rgb);
  return colour === undefined ? { kind } : { kind, colour };
}

const USUAL: Readonly<Record<string, unknown>> = { font: "Arial", size: 11, colour: "000000" };

/** A style of the engine; undefined where it says nothing but what is usual. */
function lookOf(style: IStyleData): CellLook | undefined {
  const said: Record<string, unknown> = {
    font: style.ff,
    size: style.fs,
    bold: style.bl === BooleanNumber.TRUE || undefined,
    italic: style.it === BooleanNumber.TRUE || undefined,
    underlined: style.ul?.s === BooleanNumber.TRUE || undefined,
    struck: style.st?.s === BooleanNumber.TRUE || undefined,
    colour: hexOf(style.cl?.rgb),
    fill: hexOf(style.bg?.rgb),
    top: edgeOf(style.bd?.t),
    bottom: edgeOf(style.bd?.b),
    left: edgeOf(style.bd?.l),
    right: edgeOf(style.bd?.r),
    across: wordFor(ACROSS, style.ht),
    down: wordFor(DOWN, style.vt),
    wraps: style.tb === WrapStrategy.WRAP || undefined,
    format: style.n?.pattern === "General" ? undefined : style.n?.pattern,
  };
  const kept = Object.entries(said).filter(
    ([key, value]) => value !== undefined && value !== null && USUAL[key] !== value,
  );
  return kept.length === 0 ? undefined : (Object.fromEntries(kept) as CellLook);
}

function lineOf(edge: Edge | undefined): IBorderStyleData | undefined {
  const s = edge && keyFor(EDGES, edge.kind);
  return s === undefined ? undefined : { s, cl: { rgb: `#${edge!.colour ?? "000000"}` } };
}

function styleOf(look: CellLook): IStyleData {
  const borders = { t: look.top, b: look.bottom, l: look.left, r: look.right };
  const bd = Object.fromEntries(
    Object.entries(borders).flatMap(([side, edge]) => {
      const line = lineOf(edge);
      return line ? [[side, line]] : [];
    }),
  );
  return {
    ff: look.font ?? "Arial",
    fs: look.size ?? 11,
    ...(look.bold ? { bl: BooleanNumber.TRUE } : {}),
    ...(look.italic ? { it: BooleanNumber.TRUE } : {}),
    ...(look.underlined ? { ul: { s: BooleanNumber.TRUE } } : {}),
    ...(look.struck ? { st: { s: BooleanNumber.TRUE } } : {}),
    ...(look.colour === undefined ? {} : { cl: { rgb: `#${look.colour}` } }),
    ...(look.fill === undefined ? {} : { bg: { rgb: `#${look.fill}` } }),
    ...(Object.keys(bd).length === 0 ? {} : { bd }),
    ...(look.across === undefined ? {} : { ht: keyFor(ACROSS, look.across)! }),
    ...(look.down === undefined ? {} : { vt: keyFor(DOWN, look.down) ?? VerticalAlign.BOTTOM }),
    ...(look.wraps ? { tb: WrapStrategy.WRAP } : {}),
    ...(look.format === undefined ? {} : { n: { pattern: look.format } }),
  };
}

// Out of the engine.

class SheetReader {
  private readonly looks = new Map<unknown, CellLook | undefined>();

  constructor(
    private readonly engine: Engine,
    private readonly grid: Grid,
    private readonly tables: Tables,
    private readonly sheet: Worksheet,
  ) {}

  read(): WholeSheet {
    const { sheet, engine } = this;
    const config = sheet.getConfig();
    const plan = engine.plans.get(sheet.getSheetId());
    const { xSplit, ySplit } = config.freeze;
    return {
      name: sheet.getName(),
      hidden: config.hidden === BooleanNumber.TRUE,
      cells: this.cells(plan?.charts ?? []),
      columns: this.lines(config.columnData, ({ w }) => w),
      rows: this.lines(config.rowData, ({ h, ia }) => (ia === BooleanNumber.TRUE ? undefined : h)),
      frozenRows: Math.max(ySplit, 0),
      frozenColumns: Math.max(xSplit, 0),
      gridLines: config.showGridlines !== BooleanNumber.FALSE,
      tables: this.tables
        .all()
        .filter((table) => table.sheet === sheet)
        .map(({ name, range, headers }) => ({ name, area: areaOf(range), headers })),
      merged: config.mergeData.map(areaOf),
      rules: this.rules(),
      bars: this.bars(),
      charts: plan?.charts ?? [],
      ...(plan?.print ? { print: plan.print } : {}),
    };
  }

  private look(style: ICellData["s"]): CellLook | undefined {
    if (!style) return undefined;
    if (this.looks.has(style)) return this.looks.get(style);
    const found = this.engine.workbook.getStyles().get(style);
    const look = found ? lookOf(found) : undefined;
    this.looks.set(style, look);
    return look;
  }

  private cells(charts: readonly { readonly title: string; readonly from: string }[]): WholeCells {
    const { sheet, engine, grid } = this;
    const sheetId = sheet.getSheetId();
    const spills = engine.injector.get(FormulaDataModel).getArrayFormulaRange()[engine.unitId];
    const ranges = spills?.[sheetId];
    const notes = new Map(charts.map((chart) => [chart.from, chartNote(chart.title)]));
    const cells: WholeCells = new Map();
    sheet.getCellMatrix().forValue((row, column, cell) => {
      if (!cell) return;
      const formula = cell.f || cell.si ? grid.formula(sheet, row, column) : null;
      const fault = formula === null ? undefined : engine.faults.at({ sheetId, row, column });
      const look = this.look(cell.s);
      let value = readCell(cell, fault);
      if (typeof value === "string" && notes.size > 0 && [...notes.values()].includes(value))
        value = "";
      if (value === "" && formula === null && !look) return;
      const range = formula === null ? null : ranges?.[row]?.[column];
      const found: WholeCell = {
        value,
        ...(formula === null ? {} : { formula }),
        ...(range ? { fills: this.filled(range) } : {}),
        ...(look ? { look } : {}),
      };
      let line = cells.get(row + 1);
      if (!line) cells.set(row + 1, (line = []));
      line[column + 1] = found;
    });
    return cells;
  }

  private filled(range: IRange): WholeCell["fills"] & object {
    const values = this.grid.values({ sheet: this.sheet, range });
    return { rows: values.length, columns: values[0]?.length ?? 1, values };
  }

  private lines<Line extends { hd?: BooleanNumber; s?: ICellData["s"] }>(
    data: { readonly [index: number]: Line | undefined | null },
    pixels: (line: Line) => number | undefined,
  ): Map<number, WholeLine> {
    const lines = new Map<number, WholeLine>();
    for (const [index, line] of Object.entries(data)) {
      if (!line) continue;
      const size = pixels(line);
      const look = this.look(line.s);
      const found: WholeLine = {
        ...(size === undefined ? {} : { pixels: size }),
        ...(line.hd === BooleanNumber.TRUE ? { hidden: true } : {}),
        ...(look ? { look } : {}),
      };
      if (Object.keys(found).length > 0) lines.set(Number(index) + 1, found);
    }
    return lines;
  }

  private rules(): WholeRule[] {
    const { injector, unitId } = this.engine;
    const rules = injector.get(SheetDataValidationModel).getRules(unitId, this.sheet.getSheetId());
    return rules.map((rule: ISheetDataValidationRule) => ({
      areas: rule.ranges.map(areaOf),
      type: rule.type,
      ...(rule.operator ? { operator: rule.operator } : {}),
      ...(rule.formula1 === undefined ? {} : { first: rule.formula1 }),
      ...(rule.formula2 === undefined ? {} : { second: rule.formula2 }),
      allowsBlank: rule.allowBlank !== false,
      refuses: rule.showErrorMessage === true,
      ...(rule.error === undefined ? {} : { error: rule.error }),
      ...(rule.prompt === undefined ? {} : { prompt: rule.prompt }),
    }));
  }

  private bars(): WholeSheet["bars"] {
    const { injector, unitId } = this.engine;
    const rules = injector
      .get(ConditionalFormattingRuleModel)
      .getSubunitRules(unitId, this.sheet.getSheetId());
    return (rules ?? [])
      .filter(({ rule }) => rule.type === CFRuleType.dataBar)
      .flatMap(({ ranges }) => ranges.map(areaOf));
  }
}

function namesIn({ injector, unitId, workbook }: Engine): NamePlan[] {
  const map = injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {};
  return Object.values(map).map(({ name, formulaOrRefString, localSheetId }) => {
    const sheet =
      localSheetId === undefined || localSheetId === SCOPE_WORKBOOK_VALUE_DEFINED_NAME
        ? null
        : workbook.getSheetBySheetId(localSheetId);
    return {
      name,
      refersTo: `=${formulaOrRefString.replace(/^=/, "")}`,
      ...(sheet ? { sheet: sheet.getName() } : {}),
    };
  });
}

/** All that the workbook holds now. */
export const readWhole = (engine: Engine, grid: Grid, tables: Tables): WholeBook => ({
  sheets: engine.workbook
    .getSheets()
    .map((sheet) => new SheetReader(engine, grid, tables, sheet).read()),
  names: namesIn(engine),
});

// Into the engine.

const SPARE_ROWS = 200;
const LEAST_COLUMNS = 26;
const SPARE_COLUMNS = 6;

function sheetData(sheet: WholeSheet, id: string): Partial<IWorksheetData> & { id: string } {
  const styles = new Map<CellLook, IStyleData>();
  const dress = (look: CellLook | undefined): { s?: IStyleData } => {
    if (!look) return {};
    if (!styles.has(look)) styles.set(look, styleOf(look));
    return { s: styles.get(look)! };
  };
  const cellData: Record<number, Record<number, ICellData>> = {};
  let [bottom, right] = [0, 0];
  for (const [row, line] of sheet.cells) {
    const cells: Record<number, ICellData> = (cellData[row - 1] = {});
    line.forEach((cell, column) => {
      if (!cell) return;
      const content =
        cell.formula === undefined ? writtenCell(cell.value) : formulaCell(cell.formula);
      cells[column - 1] = { ...content, ...dress(cell.look) };
      bottom = Math.max(bottom, row + (cell.fills?.rows ?? 1) - 1);
      right = Math.max(right, column + (cell.fills?.columns ?? 1) - 1);
    });
  }
  for (const { title, from } of sheet.charts) {
    const { startRow, startColumn } = engineRange(readArea(from)!);
    const note = { ...writtenCell(chartNote(title)), s: styleOfRole("hint") };
    (cellData[startRow] ??= {})[startColumn] = { ...cellData[startRow]?.[startColumn], ...note };
  }
  const lines = (from: ReadonlyMap<number, WholeLine>, size: "w" | "h"): Record<number, object> =>
    Object.fromEntries(
      [...from].map(([index, { pixels, hidden, look }]) => [
        index - 1,
        {
          ...(pixels === undefined ? {} : { [size]: pixels }),
          ...(pixels === undefined || size === "w" ? {} : { ia: BooleanNumber.FALSE }),
          ...(hidden ? { hd: BooleanNumber.TRUE } : {}),
          ...dress(look),
        },
      ]),
    );
  return {
    id,
    name: sheet.name,
    hidden: sheet.hidden ? BooleanNumber.TRUE : BooleanNumber.FALSE,
    rowCount: bottom + SPARE_ROWS,
    columnCount: Math.max(right + SPARE_COLUMNS, LEAST_COLUMNS),
    cellData,
    columnData: lines(sheet.columns, "w"),
    rowData: lines(sheet.rows, "h"),
    mergeData: sheet.merged.map(engineRange),
    freeze: {
      ySplit: sheet.frozenRows,
      xSplit: sheet.frozenColumns,
      startRow: sheet.frozenRows || -1,
      startColumn: sheet.frozenColumns || -1,
    },
    showGridlines: sheet.gridLines ? BooleanNumber.TRUE : BooleanNumber.FALSE,
  };
}

function addRule({ unitId }: Engine, subUnitId: string, plan: WholeRule): Change {
  const rule: ISheetDataValidationRule = {
    uid: generateRandomId(),
    type: plan.type as DataValidationType,
    ranges: plan.areas.map(engineRange),
    allowBlank: plan.allowsBlank,
    showErrorMessage: plan.refuses,
    errorStyle: (plan.refuses ? 1 : 0) as DataValidationErrorStyle,
    renderMode: DataValidationRenderMode.ARROW,
    ...(plan.operator === undefined ? {} : { operator: plan.operator as DataValidationOperator }),
    ...(plan.first === undefined ? {} : { formula1: plan.first }),
    ...(plan.second === undefined ? {} : { formula2: plan.second }),
    ...(plan.error === undefined ? {} : { error: plan.error }),
    ...(plan.prompt === undefined ? {} : { prompt: plan.prompt, showInputMessage: true }),
  };
  const at = { unitId, subUnitId };
  return change(AddDataValidationMutation.id, { ...at, rule }, RemoveDataValidationMutation.id, {
    ...at,
    ruleId: rule.uid,
  });
}

/**
 * The changes that put a whole workbook in the place of the one that is open: the old tables and names
 * go first, as formulas know them by name, and the old sheets only when others stand beside them.
 */
export function replaceWhole(
  engine: Engine,
  grid: Grid,
  tables: Tables,
  book: WholeBook,
): Change[] {
  const { workbook, unitId, injector } = engine;
  const old = workbook.getSheets();
  const names = Object.keys(injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {});
  const fresh = book.sheets.map((sheet) => ({ sheet, id: generateRandomId() }));
  for (const { sheet, id } of fresh)
    engine.plans.set(id, {
      name: sheet.name,
      blocks: [],
      charts: sheet.charts,
      ...(sheet.print ? { print: sheet.print } : {}),
    });
  const idOf = (name: string | undefined): string | undefined =>
    fresh.find(({ sheet }) => sheet.name === name)?.id;
  return [
    ...tables.all().map(({ id }) => removeTable(engine, id)),
    ...names.map((id) => removeName(engine, id)),
    ...fresh.map(({ sheet, id }, index) =>
      addSheet(engine, old.length + index, sheetData(sheet, id)),
    ),
    ...[...old].reverse().map((sheet) => removeSheet(engine, sheet.getSheetId())),
    ...fresh.flatMap(({ sheet, id }) => [
      ...sheet.tables.map(({ name, area, headers }) =>
        addTable(engine, id, { name, range: engineRange(area), header: [...headers] }),
      ),
      ...sheet.rules.map((rule) => addRule(engine, id, rule)),
      ...sheet.bars.map((area) => addBar(engine, id, engineRange(area))),
    ]),
    ...book.names.map((name) => addNamePlan(engine, name, idOf(name.sheet))),
  ];
}
