/**
 * Cures: only the last 20 steps can be undone. Seen in 0.25.1, which has the number in its code.
 *
 * The engine drops the first step of a full history; here it is put back until ours is full.
 */
import {
  type DependencyOverride,
  ICommandService,
  IContextService,
  type IUndoRedoItem,
  IUndoRedoService,
  IUniverInstanceService,
  LocalUndoRedoService,
} from "@univerjs/core";

/** So many steps can be undone. */
export const MOST_STEPS = 200;

class LongHistory extends LocalUndoRedoService {
  override pushUndoRedo(item: IUndoRedoItem): void {
    const stack = this._getUndoStack(item.unitID, true);
    const [first] = stack;
    const isFull = stack.length >= MOST_STEPS;
    super.pushUndoRedo(item);
    if (first && stack[0] !== first && !isFull) stack.unshift(first);
  }
}

/** For the start of the engine, which would make its own history otherwise. */
export const longHistory: DependencyOverride = [
  [
    IUndoRedoService,
    {
      useFactory: (...given: ConstructorParameters<typeof LocalUndoRedoService>) =>
        new LongHistory(...given),
      deps: [IUniverInstanceService, ICommandService, IContextService],
    },
  ],
];
