/** F6 goes from the sheets to the pane and back: in the grid the Tab key moves from cell to cell. */
import { ILayoutService } from "@univerjs/ui";
import type { Engine } from "../workbook/embedded/engine";

export interface Sides {
  readonly sheets: HTMLElement;
  readonly pane: HTMLElement;
  /** Says how to leave the grid, and does it when pressed. */
  readonly hint: HTMLElement;
  /** Brings the sheets into sight, should they be folded away. */
  readonly unfold: () => void;
}

export function crossWithF6({ injector }: Engine, { sheets, pane, hint, unfold }: Sides): void {
  const root = pane.shadowRoot!;
  let lastInPane: HTMLElement | null = null;

  function toPane(): void {
    lastInPane?.focus();
    if (!root.activeElement)
      root.querySelector<HTMLElement>('[role="tab"][aria-selected="true"]')?.focus();
  }
  function toSheets(): void {
    unfold();
    injector.get(ILayoutService).focus();
  }

  root.addEventListener("focusin", ({ target }) => (lastInPane = target as HTMLElement));
  hint.addEventListener("click", toPane);
  addEventListener(
    "keydown",
    (event) => {
      const inSheets = event.target instanceof Node && sheets.contains(event.target);
      // Whoever presses Tab in the grid may be looking for the way out.
      if (event.key === "Tab" && inSheets) hint.dataset["shown"] = "";
      if (event.key !== "F6" || event.ctrlKey || event.altKey || event.metaKey) return;
      event.preventDefault();
      event.stopPropagation();
      if (document.activeElement === pane) toSheets();
      else toPane();
    },
    { capture: true },
  );
  for (const leaving of ["focusin", "pointerdown"])
    addEventListener(leaving, ({ target }) => {
      if (target === pane || leaving === "pointerdown") delete hint.dataset["shown"];
    });
}
