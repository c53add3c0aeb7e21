/** The page of the add-in in a browser: in Excel, in none, without its script; and its policy. */
import type { Browser, Page } from "playwright-core";
import { openBrowser } from "../browser/support/browser";
import { openExcelPage, type Place } from "./support/excelPage";
import { EXCEL_2021 } from "./support/library";

let browser: Browser;
beforeAll(async () => (browser = await openBrowser()));
afterAll(() => browser.close());

test.each<[string, Place, RegExp]>([
  ["in a browser without Excel", "outside", /add-in for Excel.*manifest\.xml/s],
  ["without Office's script", "unreachable", /could not be loaded.*last values/s],
  ["in an Excel that is too old", { sets: { ...EXCEL_2021, ExcelApi: "1.9" } }, /too old.*2021/s],
])("%s it explains itself", async (_where, place, words) => {
  const { page, refused, close } = await openExcelPage(browser, place);
  await page.locator("#outside h1").waitFor();
  expect(await page.locator("#outside").innerText()).toMatch(words);
  expect(refused).toEqual([]);
  await close();
});

describe("in Excel", () => {
  test("the pane works, the functions are there, and the policy refuses nothing of ours", async () => {
    const { page, host, refused, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.locator("#pane button").first().waitFor();
    expect(await page.locator("#outside").isHidden()).toBe(true);
    expect(host.syncs).toBeGreaterThan(0);
    expect(
      await page.evaluate(() =>
        Object.keys((window as never as { registered: object }).registered),
      ),
    ).toContain("BEST");
    expect(refused).toEqual([]);
    expect(host.unknown).toEqual([]);
    await close();
  });

  test("set-up makes the sheets and tells which, once", async () => {
    const { page, host, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.getByRole("tab", { name: "Set-up" }).click();
    await page.getByRole("button", { name: "Make what is missing" }).click();
    await page.getByText(/^Made Start, /).waitFor();
    expect(host.book.sheets.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["Mine", "Start", "Log", "Discs", "Card", "Holes", "Rounds"]),
    );
    await page.getByRole("heading", { name: "Ready" }).waitFor();
    expect(host.unknown).toEqual([]);
    await close();
  });

  const showPane = (page: Page, isShown: boolean): Promise<void> =>
    page.evaluate(
      (shown) => (window as never as { showPane(shown: boolean): void }).showPane(shown),
      isShown,
    );

  test("formulas that Excel met without the add-in are repaired when the pane opens, and it says why", async () => {
    const { page, host, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.getByRole("tab", { name: "Set-up" }).click();
    await page.getByRole("button", { name: "Make what is missing" }).click();
    await page.getByText(/^Made Start, /).waitFor();
    const ours = host.book.sheets.flatMap(({ cells }) =>
      [...cells]
        .filter(([, { formula }]) => formula?.includes("CARRY."))
        .map(([at]) => ({ cells, at })),
    );
    for (const { cells, at } of ours)
      cells.set(at, { ...cells.get(at)!, kind: "Error", value: "#NAME?" });
    await showPane(page, true);
    await page.getByText(/^Cells showed #NAME\?.*Wrote \d+\sformulas again\.$/).waitFor();
    expect(ours.map(({ cells, at }) => cells.get(at)!.value)).not.toContain("#NAME?");
    expect(host.unknown).toEqual([]);
    await close();
  });

  test("manual calculation is told when the pane opens", async () => {
    const { page, host, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.getByRole("tab", { name: "Set-up" }).waitFor();
    host.book.calculationMode = "Manual";
    await showPane(page, true);
    await page.getByText(/older than the pane.*Recalculate/).waitFor();
    await close();
  });

  test("with the pane closed a change causes no request; when it opens it is read", async () => {
    const { page, host, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.getByRole("tab", { name: "Set-up" }).click();
    await page.getByText("6 of 6 missing").waitFor();
    await showPane(page, false);
    const before = host.syncs;
    host.book.addName("Settings", "=Mine!$A$1:$B$2");
    for (let row = 1; row < 5; row++) host.type("Mine", row, 1, "Player");
    await page.waitForTimeout(300);
    expect(host.syncs).toBe(before);
    await showPane(page, true);
    await page.getByText("5 of 6 missing").waitFor();
    await close();
  });

  test("while a cell is being edited the pane says so, keeps what was typed, and writes it after", async () => {
    const { page, host, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.getByRole("tab", { name: "Set-up" }).click();
    await page.getByRole("button", { name: "Make what is missing" }).click();
    await page.getByText(/^Made Start, /).waitFor();
    await page.getByRole("tab", { name: "Notes" }).click();
    const notes = page.getByRole("textbox").first();
    await notes.fill("Copper mid 301");
    const leave = host.edit();
    await page.getByRole("button", { name: /^Add/ }).click();
    await page.getByText(/Excel waits: press Enter in the cell being edited/).waitFor();
    expect(await notes.inputValue()).toBe("Copper mid 301");
    const throws = host.book.findTable("Throws")!;
    const discs = (): unknown[] =>
      [1, 2, 3].map((down) => throws.sheet.at(throws.area.top + down, throws.area.left + 1)?.value);
    expect(discs()).not.toContain("Copper mid");
    leave();
    await page.getByText(/Excel waits/).waitFor({ state: "hidden" });
    await page.waitForTimeout(300);
    expect(discs()).toContain("Copper mid");
    await close();
  });

  test("the self-test runs in the pane and ends in a report, even where formulas are not calculated", async () => {
    const place = { sets: EXCEL_2021 };
    const { page, host, refused, close } = await openExcelPage(browser, place, "self-test.html");
    await page.getByRole("button", { name: "Run" }).click();
    const report = page.getByRole("textbox", { name: "Report" });
    await page.waitForFunction(() =>
      /^\d+ of \d+ failed/.test(document.querySelector("textarea")!.value),
    );
    expect(await report.inputValue()).toMatch(/^ok +Add a throw, hear of it, and take it back/m);
    expect(await report.inputValue()).toMatch(/^FAILED +A line of sight of 301/m);
    expect(refused).toEqual([]);
    expect(host.unknown).toEqual([]);
    await close();
  });

  test("what Excel refuses is a sentence in the pane, and nothing is made", async () => {
    const { page, host, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    host.book.isProtected = true;
    await page.getByRole("tab", { name: "Set-up" }).click();
    await page.getByRole("button", { name: "Make what is missing" }).click();
    await page.getByText(/workbook is protected.*Review/).waitFor();
    expect(host.book.sheets).toHaveLength(1);
    await close();
  });

  test("what the player types in the sheet shows in the pane by itself", async () => {
    const { page, host, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.getByRole("tab", { name: "Set-up" }).click();
    await page.getByText("6 of 6 missing").waitFor();
    host.book.addName("Settings", "=Mine!$A$1:$B$2");
    host.type("Mine", 1, 1, "Player");
    await page.getByText("5 of 6 missing").waitFor();
    await close();
  });

  test("the button of the ribbon recalculates and says when it is done", async () => {
    const { page, host, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.locator("#pane button").first().waitFor();
    await page.evaluate(
      () =>
        new Promise<void>((completed) =>
          (
            window as never as { ribbon: { recalculate(event: { completed(): void }): void } }
          ).ribbon.recalculate({ completed }),
        ),
    );
    expect(host.book.calculations).toEqual(["Full"]);
    await close();
  });

  test("scripts from elsewhere, and code out of text, are refused", async () => {
    const { page, refused, close } = await openExcelPage(browser, { sets: EXCEL_2021 });
    await page.locator("#pane button").first().waitFor();
    await page.evaluate(() => {
      const script = document.createElement("script");
      script.src = "https://example.org/other.js";
      document.head.append(script);
    });
    const ran = await page.evaluate(() => {
      const script = document.createElement("script");
      script.textContent = "window.ran = true";
      document.head.append(script);
      return "ran" in window;
    });
    expect(ran).toBe(false);
    expect(refused.length).toBeGreaterThanOrEqual(2);
    await close();
  });
});
