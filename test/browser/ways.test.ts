/** Whether one gets about on the page: from the sheets to the pane and back, and in a narrow window. */
import { startSite, type Site, type BookPage } from "./support/bookPage";

let site: Site;

beforeAll(async () => {
  site = await startSite();
});
afterAll(() => site.close());

/** Where the keyboard's focus is: in the grid, or on which part of the pane. */
const focused = ({ page }: BookPage): Promise<string> =>
  page.evaluate(() => {
    const { activeElement } = document;
    if (activeElement?.closest("#grid")) return "grid";
    return activeElement?.shadowRoot?.activeElement?.id ?? String(activeElement?.id);
  });

describe("in a wide window", () => {
  let book: BookPage;

  beforeAll(async () => {
    book = await site.open();
    await book.page.locator("#pane #pick").waitFor();
    await book.page.locator("#pane").getByRole("button", { name: "Look around" }).click();
    await book.page.mouse.click(500, 500);
  });

  it("leads with F6 from the grid to the pane, and back to where one was", async () => {
    const { page } = book;
    const visits: string[] = [];
    for (const key of ["F6", "Tab", "F6", "F6"]) {
      await page.keyboard.press(key);
      visits.push(await focused(book));
    }
    expect(visits).toEqual(["tab-hole", "hole-from", "grid", "hole-from"]);
    await page.keyboard.press("F6");
  });

  it("says so to whoever presses Tab in the grid", async () => {
    const { page } = book;
    const hint = page.getByRole("button", { name: "F6 goes from the sheets to the pane and back" });
    const top = async (): Promise<number> => (await hint.boundingBox())!.y;
    expect(await top()).toBeLessThan(0);
    await page.keyboard.press("Tab");
    expect(await top()).toBeGreaterThanOrEqual(0);
    await hint.click();
    expect(await focused(book)).toBe("hole-from");
  });

  it("has nothing under its foot", async () => {
    const below = await book.page.evaluate(() => {
      window.scrollTo(0, 1000);
      document.body.scrollTo(0, 1000);
      return window.scrollY + document.body.scrollTop;
    });
    expect(below).toBe(0);
  });

  it("never takes a swipe for the way back", async () => {
    const behaviour = (selector: string): Promise<string> =>
      book.page
        .locator(selector)
        .evaluate((element) => getComputedStyle(element).overscrollBehavior);
    expect([await behaviour("html"), await behaviour("body")]).toEqual(["none", "none"]);
  });

  it("takes the opening of a file back, from the message about it", async () => {
    const before = await book.table("Throws");
    const pane = book.page.locator("#pane");
    await pane.getByRole("tab", { name: "Share" }).click();
    await pane.locator("#open-file").setInputFiles({
      name: "mine.csv",
      mimeType: "text/csv",
      buffer: Buffer.from("Disc,Carry\nMint fairway,344\n"),
    });
    await pane.getByText("Opened mine.csv: 1 row").waitFor();
    expect(await book.table("Throws")).not.toEqual(before);
    await pane.getByRole("button", { name: "Undo" }).click();
    await pane.getByText("Taken back: opening mine.csv.").waitFor();
    expect(await book.table("Throws")).toEqual(before);
  });

  it("complains of nothing", () => expect(book.complaints).toEqual([]));
});

describe("in a narrow window", () => {
  let book: BookPage;

  beforeAll(async () => {
    book = await site.open({ viewport: { width: 400, height: 800 } });
  });

  it("shows the answer first", async () => {
    const answer = book.page.locator("#pane #pick");
    await answer.waitFor();
    const { y, height } = (await answer.boundingBox())!;
    expect(y + height).toBeLessThan(800);
    expect(await book.page.locator("#grid").isVisible()).toBe(false);
  });

  it("shows the sheets when asked to, and they can be typed into", async () => {
    const { page } = book;
    await page.getByRole("button", { name: "Show the sheets" }).click();
    expect(await page.locator("#grid").isVisible()).toBe(true);
    await page
      .locator("#grid canvas")
      .last()
      .click({ position: { x: 100, y: 100 } });
    await book.type("Start!B12", "311", "Enter");
    expect(await book.cell("Start!B12")).toBe(311);
    await page.getByRole("button", { name: "Hide the sheets" }).click();
    expect(await page.locator("#grid").isVisible()).toBe(false);
  });

  it("unfolds them for F6", async () => {
    const { page } = book;
    await page.locator("#pane").getByRole("tab", { name: "Hole" }).focus();
    await page.keyboard.press("F6");
    expect(await page.locator("#grid").isVisible()).toBe(true);
    expect(await focused(book)).toBe("grid");
  });

  it("complains of nothing", () => expect(book.complaints).toEqual([]));
});
