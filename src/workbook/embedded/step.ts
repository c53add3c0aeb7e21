/** Changes to the workbook as one step of its undo history: all of them or none. */
import { sequenceExecute, type IMutationInfo } from "@univerjs/core";
import { PortError } from "../port";
import { sentences } from "../sentences";
import type { Engine } from "./engine";

export interface Change {
  readonly redo: IMutationInfo<object>;
  readonly undo: IMutationInfo<object>;
}

/** Makes the changes without a trace in the undo history, for a workbook that is being opened. */
export function apply({ commands }: Engine, changes: readonly Change[], doing: string): void {
  let done = 0;
  for (const { redo } of changes) {
    if (!commands.syncExecuteCommand(redo.id, redo.params)) {
      takeBack(changes.slice(0, done), commands);
      throw new PortError("failed", sentences.failed(doing));
    }
    done += 1;
  }
}

const undosOf = (changes: readonly Change[]): IMutationInfo<object>[] =>
  changes.map(({ undo }) => undo).reverse();

function takeBack(changes: readonly Change[], commands: Engine["commands"]): void {
  sequenceExecute(undosOf(changes), commands);
}

/** Makes the changes as one step that Undo takes back whole. */
export function takeStep(engine: Engine, changes: readonly Change[], doing: string): void {
  if (changes.length === 0) return;
  apply(engine, changes, doing);
  engine.history.pushUndoRedo({
    unitID: engine.unitId,
    undoMutations: undosOf(changes),
    redoMutations: changes.map(({ redo }) => redo),
  });
}
