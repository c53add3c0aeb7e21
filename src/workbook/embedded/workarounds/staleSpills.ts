/**
 * Cures: formulas go on showing figures that were worked out from cells which a spill no longer fills,
 * fills with something else since, or has only just come to fill. Seen in 0.25.1, where
 * - a range reads the old values of cells that an array has left in the same calculation;
 * - cells that an array has left are never passed on to the formulas that read them;
 * - a formula that reads the first cell of one spill and the rest of another is left out of the second
 *   round, and there is no third round for what the second one spills;
 * - an array that once had no room keeps copies of the cells in its way, and is not tried again when
 *   another array makes room.
 *
 * Here every calculation goes on in rounds: whenever an array is worked out, the cells of its spill that
 * changed are noted, and the next round works out the formulas that read one of them before it changed.
 * It ends with the first round in which no such formula is left.
 */
import {
  ObjectMatrix,
  type ICellData,
  type Injector,
  type IRange,
  type IUnitRange,
  type Nullable,
} from "@univerjs/core";
import {
  CELL_INVERTED_INDEX_CACHE,
  ErrorType,
  FORMULA_REF_TO_ARRAY_CACHE,
  FormulaDataModel,
  ICalculateFormulaService,
  IDependencyManagerService,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
  type FunctionVariantType,
  type IFormulaDatasetConfig,
} from "@univerjs/engine-formula";
import { inside } from "./seenIn";

type Cell = Nullable<ICellData>;
type Matrix = ObjectMatrix<Cell>;
type PerSheet<Content> = Record<string, Nullable<Record<string, Content>>>;
type Ranges = Record<number, Record<number, IRange>>;

interface Loaded {
  _arrayFormulaCellData: PerSheet<Matrix>;
  _arrayFormulaRange: PerSheet<Ranges>;
  _forceCalculate: boolean;
  _dirtyRanges: IUnitRange[];
  load(config: IFormulaDatasetConfig): void;
  getDirtyRanges(): IUnitRange[];
  loadDirtyRangesAndExcludedCell(ranges: IUnitRange[], excluded?: object): void;
  getFormulaData(): PerSheet<Record<number, Record<number, unknown>>>;
  getUnitData(): PerSheet<{ readonly cellData: Matrix }>;
}

interface Runtime {
  readonly currentRow: number;
  readonly currentColumn: number;
  readonly currentSubUnitId: string;
  readonly currentUnitId: string;
  _runtimeData: PerSheet<Matrix>;
  _unitArrayFormulaRange: PerSheet<Ranges>;
  _runtimeArrayFormulaCellData: PerSheet<Matrix>;
  setRuntimeData(value: FunctionVariantType): void;
  isStopExecution(): boolean;
}

interface Tree {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly row: number;
  readonly column: number;
  readonly rangeList: readonly IUnitRange[];
  /** Set for formulas that stand in no cell, such as those of conditional formats. */
  readonly formulaId?: string | null;
  readonly featureId?: string | null;
}

interface Finder {
  _dependencyTreeCache: Map<number, Tree>;
  _detectForcedRecalculationNode(...asked: unknown[]): boolean;
}

interface Calculator {
  _apply(again?: boolean): Promise<unknown>;
  _executeStep(): Promise<unknown>;
}

/** Cells of one spill that changed. */
interface Changed {
  readonly unitId: string;
  readonly sheetId: string;
  readonly cells: readonly (readonly [row: number, column: number])[];
  /** Ranges around those cells, without the cell of the formula. */
  readonly around: readonly IRange[];
  /** Which formula in the order of this calculation changed them. */
  readonly at: number;
}

/** More rounds than any chain of spills needs; only spills that go round in a circle come so far. */
const MOST_ROUNDS = 100;

const placeKey = (unitId: string, sheetId: string, row: number, column: number): string =>
  `${unitId}:${sheetId}:${row}:${column}`;

/** A whole row or column has NaN for the ends that it leaves open. */
const isIn = (range: IRange, row: number, column: number): boolean =>
  !(row < range.startRow || row > range.endRow) &&
  !(column < range.startColumn || column > range.endColumn);

const overlap = (a: IRange, b: IRange): boolean =>
  !(a.endRow < b.startRow || b.endRow < a.startRow) &&
  !(a.endColumn < b.startColumn || b.endColumn < a.startColumn);

const sameValue = (a: Cell, b: Cell): boolean =>
  (a?.v ?? null) === (b?.v ?? null) && (a?.t ?? null) === (b?.t ?? null);

function* cellsOf(range: IRange): Generator<[row: number, column: number]> {
  for (let row = range.startRow; row <= range.endRow; row++)
    for (let column = range.startColumn; column <= range.endColumn; column++) yield [row, column];
}

const oneCell = (row: number, column: number): IRange => ({
  startRow: row,
  endRow: row,
  startColumn: column,
  endColumn: column,
});

function box(cells: readonly (readonly [number, number])[]): IRange[] {
  if (cells.length === 0) return [];
  const range = { ...oneCell(...cells[0]!) };
  for (const [row, column] of cells) {
    range.startRow = Math.min(range.startRow, row);
    range.endRow = Math.max(range.endRow, row);
    range.startColumn = Math.min(range.startColumn, column);
    range.endColumn = Math.max(range.endColumn, column);
  }
  return [range];
}

const eachSheet = <Content>(
  all: PerSheet<Content>,
  visit: (unitId: string, sheetId: string, content: Content) => void,
): void => {
  for (const [unitId, sheets] of Object.entries(all))
    for (const [sheetId, content] of Object.entries(sheets ?? {}))
      if (content) visit(unitId, sheetId, content);
};

function eachRange(
  ranges: Ranges,
  visit: (row: number, column: number, range: IRange) => void,
): void {
  for (const [row, line] of Object.entries(ranges))
    for (const [column, range] of Object.entries(line)) visit(Number(row), Number(column), range);
}

/** What arrays fill, followed through one calculation. */
class Spills {
  round = 1;
  private count = 0;
  private readonly workedOut = new Map<string, number>();
  /** Of this round, and of the one before. */
  private changed: Changed[] = [];
  private earlier: readonly Changed[] = [];
  /** Arrays without room, and what they would fill. */
  private readonly waiting = new Map<string, IUnitRange & { readonly anchor: IRange }>();
  /** Spilled cells as the formulas that read them last saw them. */
  private seen: PerSheet<Matrix> = {};

  constructor(
    private readonly loaded: Loaded,
    private readonly runtime: Runtime,
    private readonly model: FormulaDataModel,
  ) {}

  /** Has the readers of cells that were filled when they last looked, and are not now, worked out. */
  begin(): void {
    this.count = 0;
    this.workedOut.clear();
    this.changed = [];
    this.waiting.clear();
    this.clearOrphans();
    this.copyRanges();
    this.copyCells();
    eachSheet(this.seen, (unitId, sheetId, cells) => {
      const now = this.loaded._arrayFormulaCellData[unitId]?.[sheetId];
      const gone: [number, number][] = [];
      cells.forValue((row, column, cell) => {
        if (!sameValue(cell, now?.getValue(row, column))) gone.push([row, column]);
      });
      if (gone.length > 0)
        this.changed.push({
          unitId,
          sheetId,
          cells: gone,
          around: gone.map((at) => oneCell(...at)),
          at: 0,
        });
    });
    this.loaded._dirtyRanges = [...this.loaded._dirtyRanges, ...this.nextRanges()];
  }

  /** The calculation is over, and what it found will be shown. */
  end(): void {
    this.seen = this.loaded._arrayFormulaCellData;
  }

  /** What the next round is to work out; nothing where all figures are up to date. */
  nextRanges(): IUnitRange[] {
    const ranges: IUnitRange[] = this.changed.flatMap(({ unitId, sheetId, around }) =>
      around.map((range) => ({ unitId, sheetId, range })),
    );
    for (const { unitId, sheetId, range, anchor } of this.waiting.values()) {
      const isFreed = this.changed.some(
        (made) =>
          made.unitId === unitId &&
          made.sheetId === sheetId &&
          made.cells.some(([row, column]) => isIn(range, row, column)),
      );
      if (isFreed) ranges.push({ unitId, sheetId, range: anchor });
    }
    this.earlier = this.changed;
    this.changed = [];
    return ranges;
  }

  /** Whether a formula read a cell before it changed, or has not been worked out since. */
  isOutdated({ unitId, subUnitId, row, column, rangeList, formulaId, featureId }: Tree): boolean {
    if (formulaId != null || featureId != null) return true;
    const workedOut = this.workedOut.get(placeKey(unitId, subUnitId, row, column)) ?? -1;
    return this.earlier.some(
      (made) =>
        made.at > workedOut &&
        rangeList.some(
          ({ unitId: unit, sheetId, range }) =>
            unit === made.unitId &&
            sheetId === made.sheetId &&
            made.around.some((near) => overlap(near, range)) &&
            made.cells.some(([down, right]) => isIn(range, down, right)),
        ),
    );
  }

  /** Takes the answer of one formula, and notes which cells of its spill changed by it. */
  around(value: FunctionVariantType, take: () => void): void {
    const { currentUnitId: unitId, currentSubUnitId: sheetId } = this.runtime;
    const { currentRow: row, currentColumn: column } = this.runtime;
    const key = placeKey(unitId, sheetId, row, column);
    this.count += 1;
    this.workedOut.set(key, this.count);
    this.waiting.delete(key);

    const before = this.take(unitId, sheetId, row, column);
    const wanted = wantedRange(value, row, column);
    const covered = wanted && this.results(unitId, sheetId, wanted);
    take();
    const range = this.runtime._unitArrayFormulaRange[unitId]?.[sheetId]?.[row]?.[column];
    const results = this.runtime._runtimeData[unitId]?.[sheetId];
    const after = new Map<string, readonly [number, number, Cell]>();
    if (range && results?.getValue(row, column)?.v === ErrorType.SPILL) {
      for (const [at, right, cell] of covered ?? [])
        if (at !== row || right !== column) restore(results, at, right, cell);
      this.waiting.set(key, { unitId, sheetId, range, anchor: oneCell(row, column) });
    } else if (range) {
      const filled = this.runtime._runtimeArrayFormulaCellData[unitId]![sheetId]!;
      for (const [at, right] of cellsOf(range))
        after.set(`${at}:${right}`, [at, right, filled.getValue(at, right)]);
      this.put(unitId, sheetId, row, column, range, after.values());
    }
    this.note(unitId, sheetId, row, column, before, after);
  }

  private note(
    unitId: string,
    sheetId: string,
    row: number,
    column: number,
    before: ReadonlyMap<string, readonly [number, number, Cell]>,
    after: ReadonlyMap<string, readonly [number, number, Cell]>,
  ): void {
    const cells: [number, number][] = [];
    let left = false;
    for (const [place, [at, right]] of new Map([...before, ...after])) {
      const isOwn = at === row && right === column;
      if (isOwn || sameValue(before.get(place)?.[2], after.get(place)?.[2])) continue;
      cells.push([at, right]);
      left ||= !after.has(place);
    }
    if (cells.length === 0) return;
    const around = [
      ...box(cells.filter(([at]) => at === row)),
      ...box(cells.filter(([at]) => at !== row)),
    ];
    this.changed.push({ unitId, sheetId, cells, around, at: this.count });
    forgetArrays(unitId, sheetId, around);
    if (left) CELL_INVERTED_INDEX_CACHE.clear();
  }

  /** Takes away what the array of a cell filled until now. */
  private take(
    unitId: string,
    sheetId: string,
    row: number,
    column: number,
  ): Map<string, readonly [number, number, Cell]> {
    const ranges = this.loaded._arrayFormulaRange[unitId]?.[sheetId];
    const inThisRun = this.runtime._unitArrayFormulaRange[unitId]?.[sheetId];
    const range = ranges?.[row]?.[column];
    const filled = this.loaded._arrayFormulaCellData[unitId]?.[sheetId];
    const filledNow = this.runtime._runtimeArrayFormulaCellData[unitId]?.[sheetId];
    const before = new Map<string, readonly [number, number, Cell]>();
    if (range && filled)
      for (const [at, right] of cellsOf(range)) {
        before.set(`${at}:${right}`, [at, right, filled.getValue(at, right)]);
        filled.realDeleteValue(at, right);
        filledNow?.realDeleteValue(at, right);
      }
    filledNow?.realDeleteValue(row, column);
    delete ranges?.[row]?.[column];
    delete inThisRun?.[row]?.[column];
    return before;
  }

  private put(
    unitId: string,
    sheetId: string,
    row: number,
    column: number,
    range: IRange,
    cells: Iterable<readonly [number, number, Cell]>,
  ): void {
    const { _arrayFormulaRange: allRanges, _arrayFormulaCellData: allCells } = this.loaded;
    const ranges = ((allRanges[unitId] ??= {})[sheetId] ??= {});
    (ranges[row] ??= {})[column] = range;
    const filled = ((allCells[unitId] ??= {})[sheetId] ??= new ObjectMatrix<Cell>());
    for (const [at, right, cell] of cells) filled.setValue(at, right, cell);
  }

  private results(unitId: string, sheetId: string, range: IRange): [number, number, Cell][] {
    const results = this.runtime._runtimeData[unitId]?.[sheetId];
    return results
      ? Array.from(cellsOf(range), ([row, column]) => [row, column, results.getValue(row, column)])
      : [];
  }

  /** Ranges whose formula is gone or has moved, and cells of no range, are still in the model. */
  private clearOrphans(): void {
    const formulas = this.loaded.getFormulaData();
    const allCells = this.model.getArrayFormulaCellData();
    eachSheet(this.model.getArrayFormulaRange() as PerSheet<Ranges>, (unitId, sheetId, ranges) => {
      const kept: IRange[] = [];
      eachRange(ranges, (row, column, range) => {
        if (formulas[unitId]?.[sheetId]?.[row]?.[column]) kept.push(range);
        else delete ranges[row]![column];
      });
      const cells = allCells[unitId]?.[sheetId] as Record<number, Record<number, Cell>> | undefined;
      for (const [row, line] of Object.entries(cells ?? {}))
        for (const column of Object.keys(line))
          if (!kept.some((range) => isIn(range, Number(row), Number(column))))
            delete line[Number(column)];
    });
  }

  /** What has no room fills nothing. */
  private copyRanges(): void {
    const copies: PerSheet<Ranges> = {};
    eachSheet(this.model.getArrayFormulaRange() as PerSheet<Ranges>, (unitId, sheetId, ranges) => {
      const copy: Ranges = ((copies[unitId] ??= {})[sheetId] = {});
      const stored = this.loaded.getUnitData()[unitId]?.[sheetId]?.cellData;
      eachRange(ranges, (row, column, range) => {
        if (stored?.getValue(row, column)?.v === ErrorType.SPILL)
          this.waiting.set(placeKey(unitId, sheetId, row, column), {
            ...{ unitId, sheetId, range, anchor: oneCell(row, column) },
          });
        else (copy[row] ??= {})[column] = range;
      });
    });
    this.loaded._arrayFormulaRange = copies;
  }

  private copyCells(): void {
    const copies: PerSheet<Matrix> = {};
    eachSheet(this.loaded._arrayFormulaCellData, (unitId, sheetId, cells) => {
      const lines = Object.entries(cells.getMatrix()).map(([row, line]) => [row, { ...line }]);
      (copies[unitId] ??= {})[sheetId] = new ObjectMatrix<Cell>(Object.fromEntries(lines));
    });
    this.loaded._arrayFormulaCellData = copies;
  }
}

function restore(results: Matrix, row: number, column: number, cell: Cell): void {
  if (cell === undefined) results.realDeleteValue(row, column);
  else results.setValue(row, column, cell);
}

/** What an answer would fill; null for a single value. */
function wantedRange(value: FunctionVariantType, row: number, column: number): IRange | null {
  const isArray = value.isReferenceObject() || (value.isValueObject() && value.isArray());
  if (!isArray) return null;
  const { startRow, startColumn, endRow, endColumn } = (
    value as unknown as { getRangePosition(): IRange }
  ).getRangePosition();
  return {
    startRow: row,
    startColumn: column,
    endRow: row + endRow - startRow,
    endColumn: column + endColumn - startColumn,
  };
}

/** Ranges that were read in this calculation are kept as arrays; those over changed cells are outdated. */
function forgetArrays(unitId: string, sheetId: string, changed: readonly IRange[]): void {
  const { _cache: cache } = inside<{ _cache: { delete(key: string): void } }>(
    FORMULA_REF_TO_ARRAY_CACHE,
    "_cache",
  );
  const outdated: string[] = [];
  FORMULA_REF_TO_ARRAY_CACHE.forEach((array, key) => {
    if (array.getUnitId() !== unitId || array.getSheetId() !== sheetId) return;
    const [startRow, startColumn] = [array.getCurrentRow(), array.getCurrentColumn()];
    const endRow = startRow + array.getRowCount() - 1;
    const endColumn = startColumn + array.getColumnCount() - 1;
    const read = { startRow, startColumn, endRow, endColumn };
    if (changed.some((range) => overlap(range, read))) outdated.push(key);
  });
  for (const key of outdated) cache.delete(key);
}

export function mendStaleSpills({ injector }: { readonly injector: Injector }): void {
  const loaded = inside<Loaded>(
    injector.get(IFormulaCurrentConfigService),
    "_arrayFormulaCellData",
    "_arrayFormulaRange",
    "_forceCalculate",
    "_dirtyRanges",
  );
  const runtime = inside<Runtime>(
    injector.get(IFormulaRuntimeService),
    "_runtimeData",
    "_unitArrayFormulaRange",
    "_runtimeArrayFormulaCellData",
    "setRuntimeData",
  );
  const finder = inside<Finder>(
    injector.get(IFormulaDependencyGenerator),
    "_dependencyTreeCache",
    "_detectForcedRecalculationNode",
  );
  const calculator = inside<Calculator>(
    injector.get(ICalculateFormulaService),
    "_apply",
    "_executeStep",
  );
  const spills = new Spills(loaded, runtime, injector.get(FormulaDataModel));

  const load = loaded.load.bind(loaded);
  loaded.load = (config) => {
    load(config);
    spills.begin();
  };

  const setRuntimeData = runtime.setRuntimeData.bind(runtime);
  runtime.setRuntimeData = (value) => spills.around(value, () => setRuntimeData(value));

  const known = injector.get(IDependencyManagerService);
  const search = known.searchDependency.bind(known);
  known.searchDependency = (ranges, skipped) => {
    const found = search(ranges, skipped);
    if (spills.round === 1 || ranges !== loaded.getDirtyRanges()) return found;
    for (const id of found) {
      const tree = finder._dependencyTreeCache.get(id);
      if (tree && !spills.isOutdated(tree)) found.delete(id);
    }
    return found;
  };

  // NOW, RAND and their like are worked out once in a calculation, not once a round.
  const isForced = finder._detectForcedRecalculationNode.bind(finder);
  finder._detectForcedRecalculationNode = (...asked) => spills.round === 1 && isForced(...asked);

  calculator._executeStep = async () => {
    spills.round = 1;
    await calculator._apply();
    while (!runtime.isStopExecution() && spills.round < MOST_ROUNDS) {
      const ranges = spills.nextRanges();
      if (ranges.length === 0) break;
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      loaded.loadDirtyRangesAndExcludedCell(ranges, {});
      loaded._forceCalculate = false;
      spills.round += 1;
      await calculator._apply(true);
    }
    if (!runtime.isStopExecution()) spills.end();
    return true;
  };
}
