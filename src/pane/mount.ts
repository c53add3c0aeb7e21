import { adoptStyles, render } from "lit";
import type { WorkbookPort } from "../workbook/port";
import { look } from "./look";
import type { PaneOptions } from "./options";
import { PaneDesk } from "./paneDesk";
import { firstState } from "./state";
import { Store } from "./store";
import { paneView } from "./view";

/** Left and right of a plot, px; as in look/page.ts. */
const MARGINS_PX = 32;
/** Wider plots say no more. */
const MOST_PLOT_PX = 560;

/**
 * Shows the pane in an element and keeps it in step with the workbook. Everything is drawn in a
 * shadow root, so that neither the host page's styles nor ours reach each other.
 */
export function mountPane(
  host: HTMLElement,
  port: WorkbookPort,
  options: PaneOptions = {},
): { close(): void } {
  const root = host.shadowRoot ?? host.attachShadow({ mode: "open" });
  adoptStyles(root, [...look]);
  const store = new Store(firstState(options.place ?? "hole"));
  const desk = new PaneDesk(store, port, options);
  let open = true;
  let drawing = 0;
  const draw = (): void => {
    drawing = 0;
    if (open) render(paneView(desk), root);
  };
  const drawSoon = (): void => {
    if (drawing === 0) drawing = requestAnimationFrame(draw);
  };
  const stopWatching = store.watch(drawSoon);
  const stopListening = port.onChange(() => void desk.refresh());
  const measuring = new ResizeObserver(([entry]) => {
    const room = Math.round(entry!.contentRect.width) - MARGINS_PX;
    const plotWidth = Math.max(240, Math.min(MOST_PLOT_PX, room));
    desk.change((state) => (state.plotWidth === plotWidth ? state : { ...state, plotWidth }));
  });
  measuring.observe(host);
  draw();
  void desk.refresh();
  return {
    close: () => {
      open = false;
      cancelAnimationFrame(drawing);
      measuring.disconnect();
      stopWatching();
      stopListening();
      render("", root);
    },
  };
}
