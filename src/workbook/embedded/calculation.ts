/** Follows the engine's calculation, which runs on its own time after each change. */
import { CommandType, type ICommandInfo, type IExecutionOptions } from "@univerjs/core";
import {
  FormulaExecutedStateType,
  IActiveDirtyManagerService,
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  SetTriggerFormulaCalculationStartMutation,
  type ISetFormulaCalculationNotificationMutation,
} from "@univerjs/engine-formula";
import {
  ClearSelectionFormatCommand,
  SetBorderCommand,
  SetRangeValuesMutation,
  SetStyleCommand,
  type ISetRangeValuesMutationParams,
} from "@univerjs/sheets";
import type { Engine } from "./engine";
import { forgetFormulas } from "./workarounds/rememberedTables";

/** Commands that write cells without touching a value. */
const LOOKS_ONLY = new Set<string>([
  SetStyleCommand.id,
  SetBorderCommand.id,
  ClearSelectionFormatCommand.id,
]);

export class Calculation {
  /** Counts changes that ask for a calculation; the last one that is done. */
  private asked = 0;
  private done = 0;
  /** The last change that each calculation under way knows of, in the order in which they end. */
  private readonly begun: number[] = [];
  private waiting: (() => void)[] = [];
  private readonly listeners: (() => void)[] = [];

  constructor(private readonly engine: Engine) {
    engine.commands.onCommandExecuted((command, options) => this.follow(command, options));
  }

  /** Resolves when every change made so far has been calculated. */
  settled(): Promise<void> {
    if (this.done >= this.asked) return Promise.resolve();
    return new Promise((resolve) => this.waiting.push(resolve));
  }

  /** Calls back whenever all is calculated. */
  onDone(listener: () => void): void {
    this.listeners.push(listener);
  }

  /** Reads and calculates every formula anew. */
  all(): Promise<void> {
    forgetFormulas(this.engine);
    this.engine.commands.syncExecuteCommand(
      SetTriggerFormulaCalculationStartMutation.id,
      {
        forceCalculation: true,
        dirtyRanges: [],
        dirtyNameMap: {},
        dirtyDefinedNameMap: {},
        dirtySuperTableMap: {},
        dirtyUnitFeatureMap: {},
        dirtyUnitOtherFormulaMap: {},
        clearDependencyTreeCache: {},
      },
      { onlyLocal: true },
    );
    return this.settled();
  }

  private follow(command: Readonly<ICommandInfo>, options?: IExecutionOptions): void {
    if (command.type !== CommandType.MUTATION) return;
    if (command.id === SetFormulaCalculationStartMutation.id) this.begun.push(this.asked);
    else if (command.id === SetFormulaCalculationNotificationMutation.id)
      this.heard(command.params as ISetFormulaCalculationNotificationMutation);
    else if (this.asksForCalculation(command, options)) this.asked += 1;
  }

  /** The engine waits a moment after such a change, for more of them, and then starts. */
  private asksForCalculation(
    command: Readonly<ICommandInfo>,
    options?: IExecutionOptions,
  ): boolean {
    const known = this.engine.injector.get(IActiveDirtyManagerService).get(command.id);
    if (!known) return false;
    if (command.id !== SetRangeValuesMutation.id) return true;
    const { trigger } = command.params as ISetRangeValuesMutationParams;
    return options?.onlyLocal !== true && !LOOKS_ONLY.has(trigger ?? "");
  }

  private heard({
    functionsExecutedState: state,
  }: ISetFormulaCalculationNotificationMutation): void {
    if (state === undefined) return;
    const upTo = this.begun.shift() ?? this.asked;
    if (state === FormulaExecutedStateType.STOP_EXECUTION) return;
    this.done = upTo;
    if (this.done < this.asked) return;
    const waiting = this.waiting;
    this.waiting = [];
    for (const call of [...waiting, ...this.listeners]) call();
  }
}
