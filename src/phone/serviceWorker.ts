/**
 * Answers the page's requests from its own files, fetched whole when this version was installed. Asks
 * the network for nothing else, and waits to take over until the page says so.
 */

/** What of a service worker is used here; TypeScript's own types for it exclude those of a page. */
interface WaitingEvent extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface RequestEvent extends Event {
  readonly request: Request;
  respondWith(answer: Promise<Response>): void;
}
interface Worker {
  readonly registration: { readonly scope: string };
  skipWaiting(): Promise<void>;
  readonly clients: { claim(): Promise<void> };
  addEventListener(type: "install" | "activate", listener: (event: WaitingEvent) => void): void;
  addEventListener(type: "fetch", listener: (event: RequestEvent) => void): void;
  addEventListener(type: "message", listener: (event: MessageEvent) => void): void;
}

const worker = self as unknown as Worker;
/** Put in by the build: every file of the page, and a word that changes with any of them. */
const FILES = JSON.parse(process.env["PAGE_FILES"]!) as string[];
const CACHE = `carrybook-phone-${process.env["PAGE_VERSION"]}`;
/** Files that other apps shared with us, until the page has read them. */
const SHARED = "carrybook-phone-shared";

const addressOf = (path: string): string => new URL(path, worker.registration.scope).href;

worker.addEventListener("install", (event) => {
  const fetchAll = async (): Promise<void> => {
    const cache = await caches.open(CACHE);
    await cache.addAll(FILES.map((path) => new Request(addressOf(path), { cache: "no-cache" })));
  };
  event.waitUntil(fetchAll());
});

worker.addEventListener("activate", (event) => {
  const tidy = async (): Promise<void> => {
    for (const name of await caches.keys())
      if (name.startsWith("carrybook-phone-") && name !== CACHE && name !== SHARED)
        await caches.delete(name);
    await worker.clients.claim();
  };
  event.waitUntil(tidy());
});

worker.addEventListener("message", ({ data }) => {
  if (data === "take over") void worker.skipWaiting();
});

worker.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (!address.href.startsWith(worker.registration.scope)) return;
  if (request.method === "POST") return event.respondWith(takeShared(request));
  if (request.method !== "GET") return;
  const path = address.href.slice(worker.registration.scope.length).replace(/[?#].*$/, "");
  event.respondWith(answer(path === "" ? "index.html" : path, request));
});

async function answer(path: string, request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(addressOf(path))) ?? fetch(request);
}

/** A file out of the system's share sheet: put aside, and the page is sent to fetch it. */
async function takeShared(request: Request): Promise<Response> {
  const file = (await request.formData()).get("workbook");
  if (file instanceof File) {
    const cache = await caches.open(SHARED);
    const headers = { "X-Name": encodeURIComponent(file.name) };
    await cache.put(addressOf("shared"), new Response(file, { headers }));
  }
  return Response.redirect(addressOf("index.html?shared"), 303);
}
