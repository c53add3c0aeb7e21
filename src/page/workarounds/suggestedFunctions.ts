/**
 * Cures: Enter or Tab puts a function in the place of what was typed (`Settings)` becomes `SLN()`), or
 * does not leave the cell. Seen in 0.25.1.
 *
 * The list of functions opens a moment after a key and stays while one types on; all the while it takes
 * Enter and Tab, and replaces the word that it remembers by the first function of the list. Here they
 * belong to the list only when a person has turned to it: Enter after an arrow key, Tab after an arrow
 * key or a pause.
 */
import { RichTextEditingMutation } from "@univerjs/docs";
import { IShortcutService, KeyCode, type IShortcutItem } from "@univerjs/ui";
import type { Engine } from "../../workbook/embedded/engine";

/** The list registers its keys anew, under this name and the editor's, whenever it changes. */
const LIST = "sheet.formula-embedding-editor.search_function.";

/** So long nothing is typed when Tab is meant for the list, ms. */
const PAUSE_MS = 400;

export function mendSuggestedFunctions({ injector, commands }: Engine): void {
  let isTurnedTo = false;
  let typedAt = 0;
  commands.onCommandExecuted(({ id, params }) => {
    if (id === RichTextEditingMutation.id) {
      // What colours the formula writes no history; what a person types does.
      if ((params as { noHistory?: boolean }).noHistory === true) return;
      isTurnedTo = false;
      typedAt = Date.now();
    } else if (id.startsWith(LIST)) {
      const { keyCode } = params as { keyCode: KeyCode };
      isTurnedTo = keyCode === KeyCode.ARROW_UP || keyCode === KeyCode.ARROW_DOWN;
    }
  });

  const meant: ReadonlyMap<unknown, () => boolean> = new Map([
    [KeyCode.ENTER, () => isTurnedTo],
    [KeyCode.TAB, () => isTurnedTo || Date.now() - typedAt >= PAUSE_MS],
  ]);
  const shortcuts = injector.get(IShortcutService);
  const register = shortcuts.registerShortcut.bind(shortcuts);
  shortcuts.registerShortcut = (item: IShortcutItem) => {
    const isMeant = item.id.startsWith(LIST) ? meant.get(item.binding) : undefined;
    return register(isMeant ? { ...item, preconditions: isMeant } : item);
  };
}
