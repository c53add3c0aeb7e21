/** Works without a connection, and takes a new version only when the player says so. */
export async function keepOffline(offerUpdate: (update: () => void) => void): Promise<void> {
  const { serviceWorker } = navigator;
  if (!serviceWorker) return;
  const registration = await serviceWorker.register("serviceWorker.js");
  const tell = (worker: ServiceWorker | null): void => {
    if (!worker || !serviceWorker.controller) return;
    offerUpdate(() => {
      serviceWorker.addEventListener("controllerchange", () => location.reload());
      worker.postMessage("take over");
    });
  };
  tell(registration.waiting);
  registration.addEventListener("updatefound", () => {
    const worker = registration.installing;
    worker?.addEventListener("statechange", () => {
      if (worker.state === "installed") tell(worker);
    });
  });
}
