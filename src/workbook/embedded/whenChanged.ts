import { CommandType } from "@univerjs/core";
import type { Engine } from "./engine";

/** Calls back once after any number of changes to sheets made in one go; returns how to stop. */
export function whenChanged({ commands }: Engine, listener: () => void): () => void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const heard = commands.onCommandExecuted(({ id, type }) => {
    if (type !== CommandType.MUTATION || !id.startsWith("sheet.")) return;
    timer ??= setTimeout(() => {
      timer = undefined;
      listener();
    });
  });
  return () => {
    heard.dispose();
    clearTimeout(timer);
  };
}
