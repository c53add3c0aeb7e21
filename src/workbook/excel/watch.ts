/** Tells of changes in the workbook, as long as somebody listens. */
import { inExcel, inSameRun } from "./session";
import { onVisible } from "./visibility";

type Handler = OfficeExtension.EventHandlerResult<unknown>;

/** Excel forgets or refuses handlers at times (while a cell is edited, after sleep); then we ask again. */
const PAUSES_MS = [500, 2_000, 10_000];

/**
 * Calls `listener` once for all changes of a tick: typed, pasted, calculated, sheets added or
 * deleted. Handlers are registered anew when the page comes into view again. While the pane is
 * closed nothing is told; what happened meanwhile is told once when it opens. Answers the way to stop.
 */
export function watch(listener: () => void): () => void {
  let handlers: Handler[] = [];
  let telling: ReturnType<typeof setTimeout> | undefined;
  let retrying: ReturnType<typeof setTimeout> | undefined;
  let stopped = false;
  let isClosed = false;
  let isStale = false;
  const tell = async (): Promise<void> => {
    if (stopped) return;
    if (isClosed) {
      isStale = true;
      return;
    }
    telling ??= setTimeout(() => {
      telling = undefined;
      listener();
    });
  };
  const start = async (attempt = 0): Promise<void> => {
    try {
      const registered = await register(tell);
      if (stopped) return await remove(registered);
      handlers = registered;
    } catch {
      const pause = PAUSES_MS[Math.min(attempt, PAUSES_MS.length - 1)];
      if (!stopped) retrying = setTimeout(() => void start(attempt + 1), pause);
    }
  };
  const again = (): void => {
    if (document.visibilityState !== "visible" || handlers.length === 0) return;
    const old = handlers;
    handlers = [];
    void remove(old).then(() => start());
    void tell();
  };
  const seen = typeof document === "undefined" ? null : document;
  seen?.addEventListener("visibilitychange", again);
  const stopLooking = onVisible((isVisible) => {
    isClosed = !isVisible;
    if (isClosed || !isStale) return;
    isStale = false;
    void tell();
  });
  void start();
  return () => {
    stopped = true;
    clearTimeout(telling);
    clearTimeout(retrying);
    stopLooking();
    seen?.removeEventListener("visibilitychange", again);
    void remove(handlers);
  };
}

const register = (tell: () => Promise<void>): Promise<Handler[]> =>
  inExcel("Listening to the workbook", async (context) => {
    const { worksheets } = context.workbook;
    const handlers = [
      worksheets.onChanged.add(tell),
      worksheets.onCalculated.add(tell),
      worksheets.onAdded.add(tell),
      worksheets.onDeleted.add(tell),
    ];
    await context.sync();
    return handlers;
  });

/** A handler that Excel no longer knows is as good as removed. */
async function remove(handlers: readonly Handler[]): Promise<void> {
  const [first] = handlers;
  if (!first) return;
  await inSameRun(first, async (context) => {
    for (const handler of handlers) handler.remove();
    await context.sync();
  }).catch(() => {});
}
