import { adoptStyles, render } from "lit";
import type { WorkbookPort } from "../workbook/port";
import { look as styles } from "./look";
import { PaneDesk, type PaneOptions } from "./controller";
import { firstState, type PaneState, Store, withFocus } from "./state";
import { paneView } from "./view";

/** Left and right of a plot, px, in a narrow pane and in a wide one; as in look/page.ts. */
const MARGINS_PX = 32;
const WIDE_MARGINS_PX = 56;
const WIDE_FROM_PX = 640;
const LEAST_PLOT_PX = 240;
/** Wider plots say no more. */
const MOST_PLOT_PX = 720;

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
  adoptStyles(root, [...styles]);
  const store = new Store<PaneState>({
    ...firstState(options.place ?? "hole"),
    ...options.remembered,
  });
  const desk = new PaneDesk(store, port, options);
  let open = true;
  let drawing = 0;
  const draw = (): void => {
    drawing = 0;
    if (!open) return;
    render(paneView(desk), root);
    giveFocus(root, store);
    if (!store.state.settled && store.state.book) setTimeout(settle);
  };
  const settle = (): void =>
    store.change((state) => (state.settled ? state : { ...state, settled: true }));
  const drawSoon = (): void => {
    if (drawing === 0) drawing = requestAnimationFrame(draw);
  };
  const stopWatching = store.watch(() => {
    drawSoon();
    options.onState?.(store.state);
  });
  const stopListening = port.onChange(() => void desk.refresh());
  const look = async (): Promise<void> => {
    if (!port.health) return;
    const { heal } = await import(/* webpackMode: "eager" */ "./setup/heal");
    await heal(desk, port);
  };
  const stopLooking = port.onShown?.(() => void look());
  const stopWaiting = port.onWaiting?.((waiting) =>
    desk.change((state) => ({ ...state, waiting })),
  );
  const measuring = new ResizeObserver(([entry]) => {
    const plotWidth = plotWidthIn(entry!.contentRect.width);
    desk.change((state) => (state.plotWidth === plotWidth ? state : { ...state, plotWidth }));
  });
  measuring.observe(host);
  draw();
  void desk.refresh();
  void look();
  return {
    close: () => {
      open = false;
      cancelAnimationFrame(drawing);
      measuring.disconnect();
      stopWatching();
      stopListening();
      stopLooking?.();
      stopWaiting?.();
      render("", root);
    },
  };
}

function plotWidthIn(paneWidth: number): number {
  const margins = paneWidth < WIDE_FROM_PX ? MARGINS_PX : WIDE_MARGINS_PX;
  return Math.max(LEAST_PLOT_PX, Math.min(MOST_PLOT_PX, Math.round(paneWidth) - margins));
}

/** Where the next thing to do is, there the focus goes: a row of throws needs no pointer. */
function giveFocus(root: ShadowRoot, store: Store<PaneState>): void {
  const { focus } = store.state;
  if (focus === null) return;
  root.getElementById(focus)?.focus();
  store.change((state) => withFocus(state, null));
}
