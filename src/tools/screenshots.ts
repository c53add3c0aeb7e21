/**
 * Pictures: the page for the README into assets/page.png, and every place of the pane, 350 px wide
 * and as long as it is, in both themes, into dist/screens.
 */
import { mkdirSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Page } from "playwright-core";
import { PLACES } from "../pane/places";
import { startSite, type Site } from "../../test/browser/support/bookPage";

const PAGE_PICTURE = resolve(__dirname, "../../assets/page.png");
const into = resolve(__dirname, "../../dist/screens");
const PANE_PX = 350;
const SHORT_PX = 800;
/** The grid is a canvas that tells nobody when it has painted. */
const GRID_PAINTS_MS = 2000;

async function takePane(page: Page, name: string): Promise<void> {
  const width = page.viewportSize()!.width;
  await page.setViewportSize({ width, height: SHORT_PX });
  const pane = page.locator("#pane");
  const height = await pane.evaluate((host) => host.scrollHeight);
  await page.setViewportSize({ width, height: Math.max(SHORT_PX, height) });
  await pane.screenshot({ path: join(into, `${name}.png`) });
}

async function takeTheme(site: Site, colorScheme: "light" | "dark"): Promise<void> {
  const viewport = { width: PANE_PX + 700, height: SHORT_PX };
  const { page } = await site.open({ viewport, colorScheme });
  const pane = page.locator("#pane");
  await pane.locator("#pick").waitFor();
  for (const { id, title } of PLACES) {
    await pane.getByRole("tab", { name: title, exact: true }).click();
    await pane.locator(`[aria-labelledby="tab-${id}"]`).waitFor();
    await takePane(page, `${id}-${colorScheme}`);
  }
  await pane.getByRole("tab", { name: "Field", exact: true }).click();
  await pane.getByRole("button", { name: "Start" }).click();
  await pane.locator("#carry").waitFor();
  await takePane(page, `field-session-${colorScheme}`);
  await page.close();
}

/** The picture at the top of the README. */
async function takePage(site: Site): Promise<void> {
  const { page } = await site.open({ viewport: { width: 1280, height: 760 } });
  await page.locator("#pane #pick").waitFor();
  await page.waitForTimeout(GRID_PAINTS_MS);
  await page.screenshot({ path: PAGE_PICTURE });
  await page.close();
}

async function screenshots(): Promise<void> {
  mkdirSync(into, { recursive: true });
  const site = await startSite();
  try {
    await takePage(site);
    for (const theme of ["light", "dark"] as const) await takeTheme(site, theme);
  } finally {
    await site.close();
  }
  console.log(`Pictures are in ${into}.`);
}

void screenshots();
