import { IUniverInstanceService, UndoCommand } from "@univerjs/core";
import type { Engine } from "../workbook/embedded/engine";
import { PortError } from "../workbook/port";

/** The way to take back the latest step of the workbook, for as long as it is the latest. */
export function takingBack(engine: Engine): () => Promise<void> {
  const latest = latestOf(engine);
  return async () => {
    if (latest === null || latestOf(engine) !== latest)
      throw new PortError(
        "changed",
        "The workbook has changed since. Take that back first, with Ctrl+Z in the sheets.",
      );
    await engine.commands.executeCommand(UndoCommand.id);
  };
}

/** The history answers for whatever has the focus; a cell that is being edited has one of its own. */
function latestOf({ injector, history, unitId }: Engine): object | null {
  injector.get(IUniverInstanceService).focusUnit(unitId);
  return history.pitchTopUndoElement() ?? null;
}
