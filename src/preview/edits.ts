import type { Engine } from "../workbook/embedded/engine";

/** Calls back on each change that a person or the pane makes, not on what the engine works out itself. */
export function whenEdited({ commands }: Engine, listener: () => void): void {
  commands.onMutationExecutedForCollab(({ id }, options) => {
    if (id.startsWith("sheet.") && options?.onlyLocal !== true) listener();
  });
}
