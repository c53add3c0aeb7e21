/** Keeps the screen on while it is wanted, where the browser allows it. */
let wanted = false;
let lock: WakeLockSentinel | null = null;

async function update(): Promise<void> {
  if (!("wakeLock" in navigator)) return;
  if (wanted && !lock && document.visibilityState === "visible") {
    // A phone that saves power refuses; the session goes on all the same.
    lock = await navigator.wakeLock.request("screen").catch(() => null);
    lock?.addEventListener("release", () => (lock = null));
    if (!wanted) void update();
  } else if (!wanted && lock) await lock.release();
}

export function keepAwake(now: boolean): void {
  if (now === wanted) return;
  wanted = now;
  void update();
}

document.addEventListener("visibilitychange", () => void update());
