/**
 * A browser for tests: the system's Chrome, Chromium or Edge, else the one that comes from npm.
 * TEST_BROWSER=packed takes the latter in any case.
 */
import { existsSync } from "node:fs";
import {
  chromium,
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
} from "playwright-core";
import { packedBrowser } from "./packedBrowser";

const FLAGS = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"];
const CHANNELS = ["chrome", "chromium", "msedge"];
const PLACES = ["/usr/bin/chromium", "/usr/bin/chromium-browser"];

async function systemBrowser(): Promise<Browser | null> {
  const executablePath = PLACES.find((path) => existsSync(path));
  if (executablePath) return chromium.launch({ executablePath, args: FLAGS });
  for (const channel of CHANNELS) {
    const browser = await chromium.launch({ channel, args: FLAGS }).catch(() => null);
    if (browser) return browser;
  }
  return null;
}

export async function openBrowser(): Promise<Browser> {
  const system = process.env["TEST_BROWSER"] === "packed" ? null : await systemBrowser();
  return system ?? chromium.launch({ ...packedBrowser(), args: FLAGS });
}

/** A browser that keeps what it stores in a folder, as a player's own does. */
export function openLasting(
  folder: string,
  options: BrowserContextOptions = {},
): Promise<BrowserContext> {
  const system =
    process.env["TEST_BROWSER"] === "packed" ? undefined : PLACES.find((path) => existsSync(path));
  const program = system ? { executablePath: system } : packedBrowser();
  return chromium.launchPersistentContext(folder, { ...program, args: FLAGS, ...options });
}
