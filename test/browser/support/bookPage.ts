/** The built page of the embedded workbook in a real browser, with all that it says and asks for kept. */
import { existsSync } from "node:fs";
import { join, resolve } from "node:path";
import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { serveFolder } from "../../../src/tools/staticServer";
import type { CellValue, FormulaCell, WorkbookPort } from "../../../src/workbook/port";
import { openBrowser } from "./browser";

const PATIENCE_MS = 20_000;

const SITE = resolve(__dirname, "../../../dist/page");

interface PageWindow {
  readonly carrybook: {
    readonly port: WorkbookPort;
    readonly ready: Promise<void>;
    calculated(): Promise<void>;
  };
}

export interface BookPage {
  readonly page: Page;
  /** Warnings and errors that the page wrote to its console, and uncaught errors. */
  readonly complaints: string[];
  /** Addresses that the page asked for outside its own server. */
  readonly outside: string[];
  cell(ref: string): Promise<CellValue>;
  range(ref: string): Promise<CellValue[][]>;
  /** A table with its header row. */
  table(name: string): Promise<CellValue[][]>;
  /** Every cell that calls one of our functions. */
  formulas(): Promise<FormulaCell[]>;
  /** Goes to a cell and types, as a person would, then waits for the calculation. */
  type(ref: string, ...keys: string[]): Promise<void>;
  calculated(): Promise<void>;
  /** Waits until something holds; on a busy machine what was typed takes its time. */
  until(holds: () => Promise<boolean>): Promise<void>;
}

export interface Site {
  open(options?: BrowserContextOptions): Promise<BookPage>;
  close(): Promise<void>;
}

/** Starts a server and a browser. */
export async function startSite(folder = SITE): Promise<Site> {
  if (!existsSync(join(folder, "index.html")))
    throw new Error("The page is not built: run npm run build first.");
  const server = await serveFolder(folder);
  const browser = await openBrowser();
  return {
    open: (options) => openPage(browser, server.address, options),
    close: async () => {
      await browser.close();
      await server.close();
    },
  };
}

async function openPage(
  browser: Browser,
  address: string,
  options: BrowserContextOptions = {},
): Promise<BookPage> {
  const page = await browser.newPage({ viewport: { width: 1400, height: 850 }, ...options });
  const complaints: string[] = [];
  const outside: string[] = [];
  page.on("console", (message) => {
    if (["warning", "error"].includes(message.type())) complaints.push(message.text());
  });
  page.on("pageerror", (error) => complaints.push(String(error)));
  page.on("request", (request) => {
    const own = [address, "data:", "blob:"].some((start) => request.url().startsWith(start));
    if (!own) outside.push(request.url());
  });
  await page.goto(address);
  await page.waitForSelector("body[data-ready]");
  return new OpenPage(page, complaints, outside);
}

class OpenPage implements BookPage {
  constructor(
    readonly page: Page,
    readonly complaints: string[],
    readonly outside: string[],
  ) {}

  async range(ref: string): Promise<CellValue[][]> {
    const values = await this.page.evaluate(
      (place) => (window as unknown as PageWindow).carrybook.port.readRange(place),
      ref,
    );
    if (!values) throw new Error(`There is no ${ref}.`);
    return values;
  }

  async table(name: string): Promise<CellValue[][]> {
    const data = await this.page.evaluate(
      (wanted) => (window as unknown as PageWindow).carrybook.port.readTable(wanted),
      name,
    );
    if (!data) throw new Error(`There is no table ${name}.`);
    return [data.headers, ...data.rows].map((row) => [...row]);
  }

  formulas(): Promise<FormulaCell[]> {
    return this.page.evaluate(() => (window as unknown as PageWindow).carrybook.port.ourFormulas());
  }

  async cell(ref: string): Promise<CellValue> {
    return (await this.range(ref))[0]![0]!;
  }

  async type(ref: string, ...keys: string[]): Promise<void> {
    await this.page.evaluate(
      (place) => (window as unknown as PageWindow).carrybook.port.show(place),
      ref,
    );
    for (const key of keys) {
      if (/^[A-Z][a-z]+$/.test(key) && key in KEYS) await this.page.keyboard.press(key);
      else await this.page.keyboard.type(key, { delay: 10 });
    }
    await this.calculated();
  }

  async until(holds: () => Promise<boolean>): Promise<void> {
    const end = Date.now() + PATIENCE_MS;
    while (!(await holds())) {
      if (Date.now() > end) throw new Error("What was waited for did not come.");
      await this.page.waitForTimeout(100);
    }
  }

  /** The engine starts to calculate a moment after a change; what is typed last must have reached it. */
  async calculated(): Promise<void> {
    await this.page.waitForTimeout(300);
    await this.page.evaluate(() => (window as unknown as PageWindow).carrybook.calculated());
  }
}

const KEYS = { Enter: true, Tab: true, Escape: true };
