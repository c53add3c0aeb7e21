/** Changes to the workbook as one step of its undo history: all of them or none. */
import { sequenceExecute, type IMutationInfo } from "@univerjs/core";
import { PortError } from "../port";
import { sentences } from "../sentences";
import type { Engine } from "./engine";

export interface Change {
  readonly redo: IMutationInfo<object>;
  readonly undo: IMutationInfo<object>;
}

/** A change out of a mutation and the one that takes it back. */
export const change = (
  redo: string,
  redoParams: object,
  undo: string,
  undoParams: object,
): Change => ({
  redo: { id: redo, params: redoParams },
  undo: { id: undo, params: undoParams },
});

/** Makes the changes without a trace in the undo history, for a workbook that is being opened. */
export function apply({ commands }: Engine, changes: readonly Change[], doing: string): void {
  const done: Change[] = [];
  try {
    for (const change of changes) {
      if (!commands.syncExecuteCommand(change.redo.id, change.redo.params))
        throw new Error(change.redo.id);
      done.push(change);
    }
  } catch (cause) {
    sequenceExecute(undosOf(done), commands);
    throw Object.assign(new PortError("failed", sentences.failed(doing)), { cause });
  }
}

const undosOf = (changes: readonly Change[]): IMutationInfo<object>[] =>
  changes.map(({ undo }) => undo).reverse();

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
