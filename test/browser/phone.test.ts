/** The phone page in a real browser, with touch, as in the field: offline, killed, full, and with the desk's file. */
import { execFileSync } from "node:child_process";
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import axe from "axe-core";
import type { Locator, Page } from "playwright-core";
import { readBook } from "../../src/workbook/file/bookBytes";
import { FilePort } from "../../src/workbook/file/filePort";
import { readLightFile, writeLightFile } from "../../src/workbook/light/lightFile";
import { LightPort } from "../../src/workbook/light/lightPort";
import { serveFolder, type StaticServer } from "../../src/tools/staticServer";
import { type BookPage, startSite, type Site } from "./support/bookPage";
import { openLasting } from "./support/browser";

jest.setTimeout(120_000);

const FOLDER = resolve(__dirname, "../../dist/phone");
const SIZES = [
  { width: 360, height: 740 },
  { width: 390, height: 844 },
] as const;
const phone = (viewport: { width: number; height: number } = SIZES[1]) => ({
  viewport,
  hasTouch: true,
  isMobile: true,
  acceptDownloads: true,
});
const PLACES = ["Field", "Notes", "Bag", "Hole", "Course", "Share", "Set-up"];

let site: Site;
const folders: string[] = [];
const newFolder = (): string => {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-"));
  folders.push(folder);
  return folder;
};

beforeAll(async () => {
  site = await startSite(FOLDER);
});
afterAll(() => site.close());

const paneOf = (page: Page): Locator => page.locator("#pane");
const goTo = (page: Page, place: string): Promise<void> =>
  paneOf(page).getByRole("tab", { name: place, exact: true }).tap();
const controlled = (page: Page): Promise<unknown> =>
  page.waitForFunction(() => navigator.serviceWorker.controller !== null);
const carryBox = (page: Page): Locator => paneOf(page).locator("#carry");

async function startSession(page: Page): Promise<void> {
  await goTo(page, "Field");
  await paneOf(page).getByRole("button", { name: "Start", exact: true }).tap();
  await carryBox(page).waitFor();
}

const countThrows = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    type PageWindow = {
      carrybook: { port: { readTable(name: string): Promise<{ rows: unknown[][] }> } };
    };
    const { rows } = await (window as unknown as PageWindow).carrybook.port.readTable("Throws");
    return rows.filter((row) => row.some((cell) => cell !== "")).length;
  });

/** Types a carry and waits until the box is empty for the next one. */
async function addThrow(page: Page, carry: number): Promise<void> {
  const before = await countThrows(page);
  for (let press = 0; press < 2; press++) {
    await carryBox(page).fill(String(carry));
    await carryBox(page).press("Enter");
    await page.waitForTimeout(150);
    // A carry far from the disc's own is asked about once.
    if ((await countThrows(page)) > before) break;
  }
  await page.waitForFunction(
    () =>
      document.querySelector("#pane")!.shadowRoot!.querySelector<HTMLInputElement>("#carry")!
        .value === "",
  );
}

describe.each(SIZES)("at $width × $height", (size) => {
  let opened: BookPage;
  beforeAll(async () => {
    opened = await site.open(phone(size));
    await paneOf(opened.page).locator("#pick").waitFor();
  });
  afterAll(() => opened.page.close());

  test.each(PLACES)("%s fits, can be touched, and has no fault of access", async (place) => {
    const { page } = opened;
    await goTo(page, place);
    await page.waitForTimeout(300);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth > innerWidth);
    expect(wide).toBe(false);
    const small = await page.evaluate(() => {
      const root = document.querySelector("#pane")!.shadowRoot!;
      return [...root.querySelectorAll("button, select, summary, .box .inner, input[type=file]")]
        .filter((each) => each.checkVisibility())
        .map(
          (each) =>
            [each.textContent!.trim(), Math.round(each.getBoundingClientRect().height)] as const,
        )
        .filter(([, height]) => height < 44);
    });
    expect(small).toEqual([]);
    await page.evaluate(axe.source);
    const faults = await page.evaluate(async () => {
      const { violations } = await (window as unknown as { axe: typeof axe }).axe.run();
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]!.html}`);
    });
    expect(faults).toEqual([]);
  });

  test("boxes for numbers open a numeric keypad", async () => {
    const { page } = opened;
    await goTo(page, "Hole");
    for (const id of ["distance", "rise", "headwind"])
      expect(["decimal", "numeric", "text"]).toContain(
        await paneOf(page).locator(`#${id}`).getAttribute("inputmode"),
      );
    expect(await paneOf(page).locator("#distance").getAttribute("inputmode")).toBe("decimal");
  });

  test("nothing was complained about and nothing left the machine", () => {
    expect(opened.complaints).toEqual([]);
    expect(opened.outside).toEqual([]);
  });
});

test("works without a connection, and remembers the place", async () => {
  const { page } = await site.open(phone());
  await controlled(page);
  await startSession(page);
  const before = await countThrows(page);
  await page.context().setOffline(true);
  await addThrow(page, 271);
  await page.reload();
  await page.waitForSelector("body[data-ready]");
  await carryBox(page).waitFor();
  expect(await countThrows(page)).toBe(before + 1);
  await addThrow(page, 265);
  expect(await countThrows(page)).toBe(before + 2);
  await goTo(page, "Hole");
  await paneOf(page).locator("#pick").waitFor();
  await page.close();
});

test("killed in the middle of a session, it loses no throw that was entered", async () => {
  const folder = newFolder();
  const server: StaticServer = await serveFolder(FOLDER);
  try {
    let context = await openLasting(folder, phone());
    let page = await context.newPage();
    await page.goto(server.address);
    await page.waitForSelector("body[data-ready]");
    await startSession(page);
    let entered = await countThrows(page);
    for (let round = 0; round < 2; round++) {
      for (const carry of [268, 281]) {
        await addThrow(page, carry);
        entered += 1;
      }
      // No farewell: as when the phone's battery ends.
      execFileSync("pkill", ["-9", "-f", folder]);
      await context.close().catch(() => undefined);
      context = await openLasting(folder, phone());
      page = await context.newPage();
      await page.goto(server.address);
      await page.waitForSelector("body[data-ready]");
      await carryBox(page).waitFor();
      expect(await countThrows(page)).toBe(entered);
    }
    await context.close();
  } finally {
    await server.close();
  }
});

test("with a full disk it says so, keeps what was typed, and goes on when there is room", async () => {
  const { page } = await site.open(phone());
  await startSession(page);
  const before = await countThrows(page);
  // The browser's own answer when its storage is full.
  await page.evaluate(() => {
    const { add } = IDBObjectStore.prototype;
    Object.assign(window, { makeRoom: () => (IDBObjectStore.prototype.add = add) });
    IDBObjectStore.prototype.add = () => {
      throw new DOMException("Full.", "QuotaExceededError");
    };
  });
  for (let press = 0; press < 2; press++) {
    await carryBox(page).fill("272");
    await carryBox(page).press("Enter");
    await page.waitForTimeout(300);
  }
  await paneOf(page).getByText("no room left").waitFor();
  expect(await carryBox(page).inputValue()).toBe("272");
  expect(await countThrows(page)).toBe(before);
  await page.evaluate(() => (window as unknown as { makeRoom: () => void }).makeRoom());
  await addThrow(page, 272);
  expect(await countThrows(page)).toBe(before + 1);
  await page.close();
});

test("a second tab has nothing until it takes the workbook over", async () => {
  const server = await serveFolder(FOLDER);
  const context = await openLasting(newFolder(), phone());
  const first = await context.newPage();
  await first.goto(server.address);
  await first.waitForSelector("body[data-ready]");
  const second = await context.newPage();
  await second.goto(server.address);
  const line = second.locator("#line");
  await line.getByText("open in another tab").waitFor();
  await line.getByRole("button", { name: "Use it here" }).tap();
  await second.waitForSelector("body[data-ready]");
  await first.locator("#line").getByText("taken the workbook over").waitFor();
  await startSession(second);
  await addThrow(second, 270);
  await context.close();
  await server.close();
});

describe("the player's own file", () => {
  const starter = (): Uint8Array => readFileSync(join(FOLDER, "starter.xlsx"));
  const noKeeper = { keep: async () => {}, load: () => Promise.reject(new Error("not asked")) };
  const desk = (bytes: Uint8Array): LightPort => new LightPort(readLightFile(bytes), noKeeper);

  async function openIn(page: Page, name: string, bytes: Uint8Array): Promise<void> {
    await goTo(page, "Share");
    await paneOf(page)
      .locator("#open-file")
      .setInputFiles({ name, mimeType: "application/octet-stream", buffer: Buffer.from(bytes) });
  }

  async function saved(page: Page): Promise<Uint8Array> {
    await goTo(page, "Share");
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      paneOf(page).getByRole("button", { name: "Save .xlsx" }).tap(),
    ]);
    return readFileSync(await download.path());
  }

  test("of 20,000 throws is opened, goes on, and comes back with one throw more", async () => {
    const big = desk(starter());
    const rows = Array.from({ length: 20_000 }, (_, at) => ({
      Date: 45000 + Math.floor(at / 40),
      Disc: "Copper mid",
      Carry: 250 + (at % 50),
    }));
    await big.addRows("Throws", rows);
    const bytes = writeLightFile(starter(), big.book);
    const { page, complaints } = await site.open(phone());
    await openIn(page, "my log.xlsx", bytes);
    await paneOf(page).getByText("Opened my log.xlsx").waitFor();
    const before = await countThrows(page);
    expect(before).toBeGreaterThan(20_000);
    await startSession(page);
    await addThrow(page, 266);
    const judge = new FilePort(await readBook(await saved(page)));
    const { rows: found } = (await judge.readTable("Throws"))!;
    expect(found.filter((row) => row.some((cell) => cell !== ""))).toHaveLength(before + 1);
    expect(complaints).toEqual([]);
    await page.close();
  });

  test("changed on both sides is merged with no throw twice, and that can be taken back", async () => {
    const { page } = await site.open(phone());
    const atFirst = (await tableIn(page, "Throws")).length;
    await startSession(page);
    await addThrow(page, 264);
    const given = await saved(page);
    await startOrGoOn(page);
    await addThrow(page, 277);

    const atDesk = desk(given);
    await atDesk.addRows("Throws", [{ Date: 46361, Disc: "Rose mid", Carry: 244 }]);
    const back = writeLightFile(given, atDesk.book);
    await openIn(page, "from the desk.xlsx", back);
    await page.getByRole("button", { name: "Merge them into it" }).tap();
    await paneOf(page).getByText("1 row added").waitFor();
    const carries = (await tableIn(page, "Throws")).slice(atFirst).map((row) => row[2]);
    expect(carries.sort()).toEqual([244, 264, 277]);

    await paneOf(page).getByRole("button", { name: "Undo" }).tap();
    await paneOf(page).getByText("Taken back").waitFor();
    const asBefore = (await tableIn(page, "Throws")).slice(atFirst).map((row) => row[2]);
    expect(asBefore).toEqual([264, 277]);
    await page.close();
  });

  test("that is none of ours is refused, and nothing changes", async () => {
    const { page } = await site.open(phone());
    const before = await countThrows(page);
    await openIn(page, "picture.xlsx", new Uint8Array([1, 2, 3]));
    await paneOf(page).getByText("not an .xlsx workbook").waitFor();
    expect(await countThrows(page)).toBe(before);
    await page.close();
  });

  test("shared by another app is opened", async () => {
    const { page } = await site.open(phone());
    await controlled(page);
    const bytes = [...starter()];
    await page.evaluate(async (content) => {
      const form = new FormData();
      form.append("workbook", new File([new Uint8Array(content)], "shared log.xlsx"));
      await fetch("open", { method: "POST", body: form });
    }, bytes);
    await page.goto(`${page.url()}?shared`);
    await page.locator("#line").getByText("Opened shared log.xlsx").waitFor();
    await page.close();
  });

  test("can be saved from a page by itself, table by table", async () => {
    const { page } = await site.open(phone());
    await startSession(page);
    await addThrow(page, 263);
    await page.goto(page.url().replace(/[^/]*$/, "rescue.html"));
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("button", { name: /^Throws/ }).tap(),
    ]);
    expect(readFileSync(await download.path(), "utf8")).toMatch(/,263,/);
    await page.close();
  });
});

test("a new version waits until the player takes it", async () => {
  const folder = newFolder();
  cpSync(FOLDER, folder, { recursive: true });
  const own = await startSite(folder);
  const { page } = await own.open(phone());
  await controlled(page);
  const worker = join(folder, "serviceWorker.js");
  const text = readFileSync(worker, "utf8");
  writeFileSync(
    worker,
    text.replace(/carrybook-phone-[0-9a-f]{16}/, "carrybook-phone-0123456789abcdef"),
  );
  writeFileSync(
    join(folder, "index.html"),
    readFileSync(join(folder, "index.html"), "utf8").replace(
      "<title>Carrybook",
      "<title>Carrybook, new",
    ),
  );
  await page.reload();
  await page.locator("#line").getByText("A new version of Carrybook is ready.").waitFor();
  expect(await page.title()).toBe("Carrybook");
  await page.locator("#line").getByRole("button", { name: "Update" }).tap();
  await page.waitForFunction(() => document.title === "Carrybook, new");
  await own.close();
});

async function startOrGoOn(page: Page): Promise<void> {
  await goTo(page, "Field");
  const startButton = paneOf(page).getByRole("button", { name: "Start", exact: true });
  await carryBox(page).or(startButton).first().waitFor();
  if (await startButton.isVisible()) await startSession(page);
}

const tableIn = (page: Page, name: string): Promise<unknown[][]> =>
  page.evaluate(async (table) => {
    type PageWindow = {
      carrybook: { port: { readTable(name: string): Promise<{ rows: unknown[][] }> } };
    };
    const { rows } = await (window as unknown as PageWindow).carrybook.port.readTable(table);
    return rows.filter((row) => row.some((cell) => cell !== ""));
  }, name);
