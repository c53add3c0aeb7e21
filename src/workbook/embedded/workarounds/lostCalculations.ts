/**
 * Cures: a change that comes while a calculation runs is never calculated, or a calculation counts as
 * done before it has begun. Seen in 0.25.1.
 *
 * For such a change the engine stops the running calculation and starts another. But it reports the
 * stopped one twice, the second time as done, and then forgets what it was still to calculate; and it
 * loads what the next one is to calculate while the stopped one still works on it.
 */
import type { Injector } from "@univerjs/core";
import {
  CELL_INVERTED_INDEX_CACHE,
  FORMULA_REF_TO_ARRAY_CACHE,
  FormulaDataModel,
  FormulaExecuteStageType,
  ICalculateFormulaService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  type IAllRuntimeData,
  type IExecutionInProgressParams,
  type IFormulaDatasetConfig,
} from "@univerjs/engine-formula";
import { inside } from "./seenIn";

interface Calculator {
  _isCalculateTreeModel: boolean;
  _executionInProgressListener$: { next(state: IExecutionInProgressParams): void };
  _executionCompleteListener$: { next(data: IAllRuntimeData): void };
  _executeStep(): Promise<unknown>;
  execute(config: IFormulaDatasetConfig): Promise<void>;
}

/** What is to be calculated, of all that one calculation is given. */
type Dirty = Pick<
  IFormulaDatasetConfig,
  | "forceCalculate"
  | "dirtyRanges"
  | "dirtyNameMap"
  | "dirtyDefinedNameMap"
  | "dirtySuperTableMap"
  | "dirtyUnitFeatureMap"
  | "dirtyUnitOtherFormulaMap"
  | "clearDependencyTreeCache"
>;

const isMap = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

function together(a: unknown, b: unknown): unknown {
  if (!isMap(a) || !isMap(b)) return b ?? a;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return Object.fromEntries([...keys].map((key) => [key, together(a[key], b[key])]));
}

function withOwed(config: IFormulaDatasetConfig, owed: Dirty): IFormulaDatasetConfig {
  const both = <Key extends keyof Dirty>(key: Key): Dirty[Key] =>
    together(owed[key], config[key]) as Dirty[Key];
  return {
    ...config,
    forceCalculate: owed.forceCalculate || config.forceCalculate,
    dirtyRanges: [...owed.dirtyRanges, ...config.dirtyRanges],
    dirtyNameMap: both("dirtyNameMap"),
    dirtyDefinedNameMap: both("dirtyDefinedNameMap"),
    dirtySuperTableMap: both("dirtySuperTableMap") ?? {},
    dirtyUnitFeatureMap: both("dirtyUnitFeatureMap"),
    dirtyUnitOtherFormulaMap: both("dirtyUnitOtherFormulaMap"),
    clearDependencyTreeCache: both("clearDependencyTreeCache") ?? {},
  };
}

export function mendLostCalculations({ injector }: { readonly injector: Injector }): void {
  const service = injector.get(ICalculateFormulaService);
  const calculator = inside<Calculator>(
    service,
    "_executionInProgressListener$",
    "_executionCompleteListener$",
    "_executeStep",
    "execute",
  );
  const loaded = injector.get(IFormulaCurrentConfigService);
  const runtime = injector.get(IFormulaRuntimeService);
  const model = injector.get(FormulaDataModel);

  /** What a calculation that was stopped leaves to the next one. */
  let owed: Dirty | null = null;
  let reported = false;
  service.executionCompleteListener$.subscribe(() => (reported = true));

  const tell = (stage: FormulaExecuteStageType): void => {
    runtime.setFormulaExecuteStage(stage);
    calculator._executionInProgressListener$.next(runtime.getRuntimeState());
  };

  async function calculate(asked: IFormulaDatasetConfig): Promise<void> {
    const config = owed ? withOwed(asked, owed) : asked;
    owed = config;
    reported = false;
    // Cells may have changed while this waited for its turn.
    loaded.load({
      ...config,
      formulaData: model.getFormulaData(),
      arrayFormulaCellData: model.getArrayFormulaCellData(),
      arrayFormulaRange: model.getArrayFormulaRange(),
    });
    runtime.reset();
    tell(FormulaExecuteStageType.START);
    calculator._isCalculateTreeModel = config.isCalculateTreeModel ?? false;
    for (let cycle = 0; cycle < (config.maxIteration || 1); cycle++) {
      runtime.setFormulaCycleIndex(cycle);
      await calculator._executeStep();
      FORMULA_REF_TO_ARRAY_CACHE.clear();
      if (runtime.isStopExecution() || !runtime.isCycleDependency()) break;
    }
    CELL_INVERTED_INDEX_CACHE.clear();
    if (runtime.isStopExecution()) runtime.markedAsStopFunctionsExecuted();
    else {
      owed = null;
      tell(FormulaExecuteStageType.CALCULATION_COMPLETED);
    }
    const result = runtime.getAllRuntimeData();
    runtime.reset();
    if (!reported) calculator._executionCompleteListener$.next(result);
  }

  let turn: Promise<void> = Promise.resolve();
  calculator.execute = (config) => (turn = turn.then(() => calculate(config)));
}
