/** How soon the phone page can be used, on a slow phone with a slow connection. */
import { gzipSync } from "node:zlib";
import { readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import type { BrowserContext } from "playwright-core";
import { openBrowser } from "../../../test/browser/support/browser";
import type { BenchRow } from "../bench";
import { serveFolder } from "../staticServer";

const FOLDER = resolve(__dirname, "../../../dist/phone");
const TIMES = 5;
/** A processor four times slower, and what browsers' tools call fast 3G. */
const SLOWER = 4;
const CONNECTION = {
  offline: false,
  latency: 150,
  downloadThroughput: (1.6 * 1024 * 1024) / 8,
  uploadThroughput: (750 * 1024) / 8,
};

/** Runs in the page: notes when a box can be typed into, and when the first pick is shown. */
const WATCH = `window.seen = {};
const look = () => {
  const root = document.getElementById("pane")?.shadowRoot;
  if (root?.querySelector("input")) seen.box ??= performance.now();
  if (root?.getElementById("pick")) seen.pick ??= performance.now();
  if (!seen.pick) requestAnimationFrame(look);
};
requestAnimationFrame(look);`;

interface Seen {
  readonly box: number;
  readonly pick: number;
}

async function startsOf(context: BrowserContext, address: string): Promise<[Seen, Seen]> {
  await context.addInitScript(WATCH);
  const page = await context.newPage();
  const protocol = await context.newCDPSession(page);
  await protocol.send("Emulation.setCPUThrottlingRate", { rate: SLOWER });
  await protocol.send("Network.enable");
  await protocol.send("Network.emulateNetworkConditions", CONNECTION);
  const seen = async (): Promise<Seen> => {
    await page.waitForFunction(() => (window as unknown as { seen?: Seen }).seen?.pick);
    return page.evaluate(() => (window as unknown as { seen: Seen }).seen);
  };
  await page.goto(address);
  const first = await seen();
  await page.waitForFunction(() => navigator.serviceWorker.controller !== null);
  await context.setOffline(true);
  await page.reload();
  return [first, await seen()];
}

const median = (values: readonly number[]): number =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

export async function rows(): Promise<BenchRow[]> {
  const server = await serveFolder(FOLDER);
  const browser = await openBrowser();
  const starts: [Seen, Seen][] = [];
  for (let time = 0; time < TIMES; time++) {
    const context = await browser.newContext({
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
    });
    starts.push(await startsOf(context, server.address));
    await context.close();
  }
  await browser.close();
  await server.close();
  const row = (name: string, mostS: number, values: readonly number[]): BenchRow => {
    const seconds = median(values) / 1000;
    return {
      name,
      target: `≤ ${mostS} s`,
      result: `${seconds.toFixed(2)} s, median of ${TIMES}`,
      ok: seconds <= mostS,
    };
  };
  const html = readFileSync(join(FOLDER, "index.html"));
  const scripts = [...html.toString().matchAll(/(?:href|src)="([^"]+\.(?:js|css))"/g)];
  const bytes = ["index.html", "starter.json", ...scripts.map(([, path]) => path!)]
    .map((path) => gzipSync(readFileSync(join(FOLDER, path))).length)
    .reduce((sum, each) => sum + each, 0);
  return [
    row(
      "first visit: boxes that can be typed into",
      1.5,
      starts.map(([{ box }]) => box),
    ),
    row(
      "first visit: first pick",
      2.5,
      starts.map(([{ pick }]) => pick),
    ),
    row(
      "offline: boxes that can be typed into",
      1.5,
      starts.map(([, { box }]) => box),
    ),
    row(
      "offline: first pick",
      1.5,
      starts.map(([, { pick }]) => pick),
    ),
    {
      name: "first load, gzip",
      target: "≤ 120 kB",
      result: `${(bytes / 1000).toFixed(1)} kB`,
      ok: bytes <= 120_000,
    },
  ];
}
