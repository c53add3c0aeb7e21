/**
 * Whether the pane is on the screen. In a shared runtime its page goes on running while the player
 * has it closed, and Excel tells so (SharedRuntime 1.1, Office.addin.onVisibilityModeChanged). An
 * Excel that refuses to tell is taken for one that shows the pane. Answers the way to stop.
 */
export function onVisible(listener: (isVisible: boolean) => void): () => void {
  const none = (): Promise<void> => Promise.resolve();
  const removal = Office.addin
    .onVisibilityModeChanged(({ visibilityMode }) => listener(visibilityMode === "Taskpane"))
    .catch(() => none);
  return () => void removal.then((remove) => remove()).catch(() => {});
}
