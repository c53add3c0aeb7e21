/** Whether what was typed outlives the page: the question before leaving, and the copy for the next visit. */
import type { Dialog, Locator } from "playwright-core";
import { startSite, type Site, type BookPage } from "./support/bookPage";

let site: Site;
let book: BookPage;
let line: Locator;
let throwsAtFirst: number;

/** Kinds of questions that the browser asked; each is answered with yes. */
const asked: string[] = [];

beforeAll(async () => {
  site = await startSite();
  book = await site.open();
  line = book.page.locator("#top-line");
  throwsAtFirst = (await book.table("Throws")).length;
  book.page.on("dialog", (dialog: Dialog) => {
    asked.push(dialog.type());
    void dialog.accept();
  });
});
afterAll(() => site.close());
beforeEach(() => asked.splice(0));

async function reload(): Promise<void> {
  await book.page.reload();
  await book.page.waitForSelector("body[data-ready]");
}

/** Types a throw into the first empty row of the log, with real keys: the browser asks only those who did something. */
async function typeThrow(carry: number): Promise<void> {
  const rows = (await book.table("Throws")).length;
  await book.type(`Log!B${5 + rows}`, "Copper mid", "Tab", String(carry), "Enter");
  await book.until(async () => (await book.table("Throws")).length === rows + 1);
}

const carries = async (): Promise<unknown[]> => (await book.table("Throws")).map((row) => row[2]);

/** What was typed beside our tables. */
const ownCells = async (): Promise<unknown[]> =>
  (await book.range("Rounds!P30:P31")).map(([value]) => value);

const copies = (): Promise<number> =>
  book.page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        const opening = indexedDB.open("carrybook", 1);
        opening.onupgradeneeded = () => opening.transaction!.abort();
        opening.onerror = () => resolve(0);
        opening.onsuccess = () => {
          const count = opening.result.transaction("copies").objectStore("copies").count();
          count.onsuccess = () => resolve(count.result);
        };
      }),
  );

const offer = (): Locator => line.getByRole("button", { name: /^Go on where you stopped \(.+\)$/ });

describe("a workbook that nobody changed", () => {
  it("is left without a question, and leaves nothing behind", async () => {
    await book.page.keyboard.press("ArrowDown");
    await reload();
    expect(asked).toEqual([]);
    expect(await line.innerText()).toBe("");
    expect(await copies()).toBe(0);
  });
});

describe("a workbook with a throw typed into it", () => {
  it("asks before it is left, and is restored only when asked to", async () => {
    await typeThrow(287);
    await book.type("Rounds!P30", "a note of my own", "Enter", "=6*7", "Enter");
    await book.page.waitForTimeout(5000);
    await book.until(async () => (await copies()) === 1);
    await reload();
    expect(asked).toEqual(["beforeunload"]);
    await offer().waitFor();
    expect(await book.table("Throws")).toHaveLength(throwsAtFirst);
    await offer().click();
    await line.getByText(/^Going on from/).waitFor();
    expect(await book.table("Throws")).toHaveLength(throwsAtFirst + 1);
    expect(await carries()).toContain(287);
    await book.until(async () => (await ownCells())[1] === 42);
    expect(await ownCells()).toEqual(["a note of my own", 42]);
  });

  it("takes the restoring back in one step", async () => {
    await line.getByRole("button", { name: "Undo" }).click();
    await book.until(async () => (await book.table("Throws")).length === throwsAtFirst);
    expect(await line.innerText()).toBe("");
  });

  it("keeps an offer that is not answered beside what is typed meanwhile", async () => {
    await typeThrow(291);
    await book.until(async () => (await copies()) >= 1);
    await book.page.waitForTimeout(5000);
    await reload();
    await typeThrow(293);
    await book.until(async () => (await copies()) === 2);
    await reload();
    await offer().waitFor();
    await line.getByRole("button", { name: "Discard" }).click();
    await book.until(async () => (await copies()) === 1);
    await offer().click();
    await line.getByText(/^Going on from/).waitFor();
    expect(await carries()).toContain(291);
  });

  it("writes when the page is hidden, without waiting for quiet", async () => {
    await reload();
    await line.getByRole("button", { name: "Discard" }).click();
    await book.until(async () => (await copies()) === 0);
    await typeThrow(295);
    await book.page.evaluate(() => {
      Object.defineProperty(document, "visibilityState", { value: "hidden" });
      document.dispatchEvent(new Event("visibilitychange"));
    });
    await book.until(async () => (await copies()) === 1);
  });

  it("is left without a question once it is saved", async () => {
    await book.page.locator("#pane").getByRole("tab", { name: "Share" }).click();
    const downloading = book.page.waitForEvent("download");
    await book.page.locator("#pane").getByRole("button", { name: "Save .xlsx" }).click();
    await downloading;
    await book.page
      .locator("#pane")
      .getByText(/^Saved as/)
      .waitFor();
    await reload();
    expect(asked).toEqual([]);
    await line.getByRole("button", { name: "Discard" }).click();
    await book.until(async () => (await copies()) === 0);
  });
});

describe("a browser that keeps nothing", () => {
  it("says so once where its storage is full, and the workbook goes on", async () => {
    await book.page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException("Full.", "QuotaExceededError");
      };
    });
    await typeThrow(297);
    await line.getByText("its storage is full. Save it as a file").waitFor();
    await line.getByRole("button", { name: "Close" }).click();
    await typeThrow(298);
    await book.page.waitForTimeout(6000);
    expect(await line.innerText()).toBe("");
    expect(await carries()).toEqual(expect.arrayContaining([297, 298]));
  });

  it("says so where storage is refused, and still asks before it is left", async () => {
    await book.page.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("Storage is not allowed here.", "SecurityError");
      };
    });
    await reload();
    expect(await line.innerText()).toBe("");
    await typeThrow(299);
    await line.getByText("Storage is not allowed here. Save it as a file").waitFor();
    expect(await carries()).toContain(299);
    asked.splice(0);
    await reload();
    expect(asked).toEqual(["beforeunload"]);
  });
});

test("the page complained of nothing and asked no other machine", () => {
  expect(book.complaints).toEqual([]);
  expect(book.outside).toEqual([]);
});
