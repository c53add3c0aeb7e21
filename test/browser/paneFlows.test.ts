/** Each place of the pane, used as a person would; the sheet is read back and compared with the core. */
import type { Locator, Page } from "playwright-core";
import { attempt } from "../../src/pane/controller";
import { type Book, bookOf, type RawBook } from "../../src/pane/book/book";
import { rungsOf } from "../../src/pane/bag/model";
import { factorsToUse, learntOf } from "../../src/pane/course/learnt";
import { planOf } from "../../src/pane/course/model";
import { pickOf, pickSentence, whySentence } from "../../src/pane/hole/model";
import { length, share } from "../../src/pane/words/figures";
import { rankOptions } from "../../src/core/choice/rank";
import { playsLikeParts } from "../../src/core/flight/playsLike";
import { conditionsOf } from "../../src/core/flight/air";
import { toMetres, toMps } from "../../src/core/units";
import type { CellValue, WorkbookPort } from "../../src/workbook/port";
import { startSite, type Site, type BookPage } from "./support/bookPage";

jest.setTimeout(240_000);

let site: Site;
let opened: BookPage;
let page: Page;
let pane: Locator;

beforeAll(async () => {
  site = await startSite();
  opened = await site.open({ permissions: ["clipboard-read", "clipboard-write"] });
  page = opened.page;
  pane = page.locator("#pane");
});
afterAll(() => site.close());

type PageWindow = { readonly carrybook: { readonly port: WorkbookPort } };

/** The sheet as the core understands it, worked out here and not in the page. */
async function book(): Promise<Book> {
  const raw = await page.evaluate(async (): Promise<RawBook> => {
    const { port } = (window as unknown as PageWindow).carrybook;
    const [throws, bag, course, results, putts, settings] = await Promise.all([
      port.readTable("Throws"),
      port.readTable("Bag"),
      port.readTable("Course"),
      port.readTable("Results"),
      port.readTable("Putts"),
      port.readRange("Settings"),
    ]);
    return { throws, bag, course, results, putts, settings, otherTables: [] };
  });
  return bookOf(raw);
}

const rowsOf = async (table: "throws" | "results"): Promise<readonly (readonly CellValue[])[]> =>
  (await book()).raw[table]!.rows;
const goTo = (place: string): Promise<void> =>
  pane.getByRole("tab", { name: place, exact: true }).click();
const words = async (selector: string): Promise<string> => pane.locator(selector).innerText();
/** Waits until the pane has caught up with what was asked of it. */
const until = (isSo: () => Promise<boolean>): Promise<void> =>
  (async () => {
    for (let turn = 0; turn < 600; turn++) {
      if (await isSo()) return;
      await page.waitForTimeout(100);
    }
    throw new Error("It did not come to be so within a minute.");
  })();
/** All that the place says. */
const shown = (): Promise<string> => words(".place");
const plain = (text: string): string => text.replace(/\s+/g, " ");

/** Types into the box that has the focus after it was emptied. */
async function retype(selector: string, text: string): Promise<void> {
  await pane.locator(selector).click();
  await page.keyboard.press("Control+A");
  await page.keyboard.type(text);
}

test("Hole answers what is typed as the core does", async () => {
  await goTo("Hole");
  await retype("#distance", "327");
  await page.keyboard.press("Tab");
  await page.keyboard.type("-6");
  await page.keyboard.press("Tab");
  await page.keyboard.type("4");
  const { card, settings } = await book();
  const shot = {
    distanceM: toMetres(327, "ft"),
    riseM: toMetres(-6, "ft"),
    headwindMps: toMps(4, "mph"),
  };
  const task = { ...shot, line: "", longTroubleM: null, shortTroubleM: null };
  const options = rankOptions(task, card, settings);
  const parts = playsLikeParts(shot, conditionsOf(settings), null);
  await until(async () => (await words("#plays-like")).startsWith(length(parts.totalM, "ft")));
  expect(await words("#pick")).toBe(pickOf(options[0]!));
  const said = plain(await words('section[aria-label="Answer"]'));
  expect(said).toContain(plain(pickSentence(options, settings)));
  expect(said).toContain(plain(whySentence(parts, settings)));
  const ranked = pane.locator('section[aria-label="Ranked"] li').first();
  expect(plain(await ranked.innerText())).toContain(plain(share(options[0]!.chance)));
});

test("Hole says what is unclear, and keeps what was typed", async () => {
  await retype("#distance", "far");
  await until(async () => (await shown()).includes("type a number, such as 12.5"));
  expect(await pane.locator("#distance").inputValue()).toBe("far");
  await retype("#distance", "300");
});

test("Hole follows the sheet", async () => {
  await until(async () => (await pane.locator("#pick").count()) === 1);
  const before = await words('section[aria-label="Ranked"]');
  const { raw } = await book();
  await page
    .locator("#grid canvas")
    .last()
    .click({ position: { x: 300, y: 300 } });
  await opened.type(`Log!C${6 + raw.throws!.rows.length - 1}`, "150", "Enter");
  await until(async () => (await words('section[aria-label="Ranked"]')) !== before);
  await page.keyboard.press("Control+Z");
  await until(async () => (await words('section[aria-label="Ranked"]')) === before);
});

test("Hole takes a range with its angle, and a forecast", async () => {
  await pane.getByText("Range finder, forecast, trouble").click();
  await pane.getByRole("radio", { name: "along the line of sight" }).check();
  await retype("#range", "300");
  await retype("#angle", "30");
  // Half the range up, √3/2 of it out.
  const { settings } = await book();
  const shot = {
    distanceM: toMetres(150 * Math.sqrt(3), "ft"),
    riseM: toMetres(150, "ft"),
    headwindMps: toMps(4, "mph"),
  };
  const steep = attempt(() => playsLikeParts(shot, conditionsOf(settings), null).totalM);
  const said = steep.ok ? `Plays like ${length(steep.value, "ft")}` : steep.why;
  await until(async () => plain(await words('section[aria-label="Answer"]')).includes(plain(said)));
  await pane.getByRole("radio", { name: "level" }).check();
  await pane.getByRole("radio", { name: "forecast" }).check();
  await retype("#speed", "10");
  await retype("#wind-from", "W");
  await retype("#bearing", "270");
  await retype("#distance", "300");
  const windy = { distanceM: toMetres(300, "ft"), riseM: toMetres(-6, "ft") };
  const headwindMps = toMps(8.5, "mph");
  const parts = playsLikeParts({ ...windy, headwindMps }, conditionsOf(settings), null);
  await until(async () => (await words("#plays-like")).startsWith(length(parts.totalM, "ft")));
});

test("Field: number, Enter, next; arrows, again, undo to the start", async () => {
  await goTo("Field");
  const before = await rowsOf("throws");
  await pane.getByRole("button", { name: "Start", exact: true }).click();
  await pane.locator("#carry").click();
  const thrown: string[] = [];
  for (const carry of ["301", "222", "255"]) {
    thrown.push(await words("#next-disc"));
    await page.keyboard.type(carry);
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("ArrowLeft");
    await page.keyboard.press("Enter");
    await until(async () => (await pane.locator("#carry").inputValue()) === "");
    await until(async () => (await words("#next-disc")) !== thrown.at(-1));
  }
  const after = await rowsOf("throws");
  expect(after.slice(before.length).map((row) => [row[1], row[2], row[3]])).toEqual([
    [thrown[0], 301, -10],
    [thrown[1], 222, -10],
    [thrown[2], 255, -10],
  ]);
  expect(new Set(thrown).size).toBe(3);
  expect(plain(await shown())).toContain("3 of 15");
  await page.keyboard.press("a");
  await until(async () => (await words("#last")).includes("off"));
  expect((await rowsOf("throws")).at(-1)![5]).toBe("off");
  expect(await words("#next-disc")).toBe(thrown[2]);
  for (let step = 4; step > 0; step--) {
    await page.keyboard.press("u");
    await until(async () => (await pane.locator(".notice.done").count()) > 0);
    await page.waitForTimeout(300);
  }
  expect(await rowsOf("throws")).toEqual(before);
});

test("Field: a throw survives the pane, which goes on where it was", async () => {
  await pane.locator("#carry").click();
  const disc = await words("#next-disc");
  await page.keyboard.type("244");
  await page.keyboard.press("Enter");
  await until(async () => (await pane.locator("#carry").inputValue()) === "");
  await goTo("Hole");
  await goTo("Field");
  await pane.getByRole("button", { name: "End session" }).click();
  await pane.getByRole("button", { name: "Go on" }).click();
  expect(plain(await words("#last"))).toContain(`${disc}, 244 ft`);
  await pane.getByRole("button", { name: "Undo" }).last().click();
  await until(async () => (await pane.locator("#last").count()) === 0);
  await pane.getByRole("button", { name: "End session" }).click();
});

test("Notes: paste, fix a name, add, undo", async () => {
  await goTo("Notes");
  const before = await rowsOf("throws");
  const text = "slate putter 211, 219 x\nmnt fairway 318\nhello there";
  await page.evaluate((notes) => navigator.clipboard.writeText(notes), text);
  await pane.locator("#notes-text").click();
  await page.keyboard.press("Control+V");
  await until(async () => (await shown()).includes("Understood: 3"));
  expect(await rowsOf("throws")).toEqual(before);
  const said = await shown();
  expect(said).toContain("Line 3");
  expect(said).toContain("is it Mint fairway?");
  await pane.locator("#name-0").selectOption("Mint fairway");
  await pane.getByRole("button", { name: "Add 3" }).click();
  await until(async () => (await rowsOf("throws")).length === before.length + 3);
  const added = (await rowsOf("throws")).slice(before.length);
  expect(added.map((row) => [row[1], row[2], row[5]])).toEqual([
    ["Slate putter", 211, ""],
    ["Slate putter", 219, "off"],
    ["Mint fairway", 318, ""],
  ]);
  await pane.getByRole("button", { name: "Undo" }).click();
  await until(async () => (await rowsOf("throws")).length === before.length);
  expect(await rowsOf("throws")).toEqual(before);
});

test("Bag: arrow keys read every rung of the ladder, and the table says the same", async () => {
  await goTo("Bag");
  const rungs = rungsOf(await book());
  const slider = pane.getByRole("slider", { name: "Smooth carry of each disc" });
  await slider.focus();
  await page.keyboard.press("Home");
  for (const { row, next } of rungs) {
    const said = await slider.getAttribute("aria-valuetext");
    expect(plain(said!)).toContain(`${row.disc}: ${length(next.carryM, "ft")} ft`);
    await page.keyboard.press("ArrowRight");
    await page.waitForTimeout(50);
  }
  await pane.locator("figure summary").first().click();
  const cells = await pane.locator("figure").first().locator("tbody tr").allInnerTexts();
  expect(cells.map((line) => line.split("\t").slice(0, 2))).toEqual(
    rungs.map(({ row, next }) => [row.disc, length(next.carryM, "ft")]),
  );
});

test("Course: the plan, a result by keyboard, and learnt factors into Settings", async () => {
  await goTo("Course");
  const before = await rowsOf("results");
  const now = await book();
  const plan = planOf(now);
  if (!plan.ok) throw new Error(plan.why);
  const [first] = plan.value;
  const hole = pane.locator(`#hole-${first!.hole.row}`);
  expect(plain(await hole.innerText())).toContain(plain(pickOf(first!.plan.option!)));
  await hole.focus();
  await page.keyboard.press("Enter");
  await pane.locator("#result-finish").click();
  await page.keyboard.type("-12");
  await page.keyboard.press("Enter");
  await until(async () => (await rowsOf("results")).length === before.length + 1);
  const row = (await rowsOf("results")).at(-1)!;
  expect([row[2], row[3], row[6], row[8]]).toEqual([1, 262, first!.plan.option!.disc, -12]);
  const learnt = learntOf(await book());
  if (!learnt.ok) throw new Error(learnt.why);
  const shown = String(Number(learnt.value.uphill.value.toFixed(2)));
  await until(async () => (await words('section[aria-label="Learnt"]')).includes(shown));
  const use = factorsToUse(learnt.value, await book());
  await pane.getByRole("button", { name: "Use these" }).click();
  await until(async () => (await book()).settings.uphillFactor !== 1);
  expect((await book()).settings).toEqual(use.settings);
  await pane.getByRole("button", { name: "In use" }).waitFor();
  for (let step = 0; step < 2; step++) {
    await pane
      .locator(".notice")
      .getByRole("button", { name: "Undo" })
      .click()
      .catch(() => {});
    await page.waitForTimeout(500);
  }
  expect((await book()).settings.uphillFactor).toBe(1);
});

test("Share: the card on the clipboard, and a partner's throws without doubles", async () => {
  await goTo("Share");
  await pane.getByRole("button", { name: "Copy the card" }).click();
  await until(async () => (await pane.locator(".notice").innerText()).includes("clipboard"));
  const copied = await page.evaluate(() => navigator.clipboard.readText());
  for (const { row, next } of rungsOf(await book()))
    expect(plain(copied)).toContain(`${row.disc} ${length(next.carryM, "ft")} (`);
  const before = await rowsOf("throws");
  await retype("#partner", "Neighbour");
  await pane.locator("#partner-text").fill("Disc\tCarry\nCopper mid\t80\nCopper mid\tfar");
  await pane.locator("#partner-distances").selectOption("m");
  await until(async () => plain(await shown()).includes("1 throw to add"));
  await pane.getByRole("button", { name: "Add 1 throw" }).click();
  await until(async () => (await rowsOf("throws")).length === before.length + 1);
  const row = (await rowsOf("throws")).at(-1)!;
  expect([row[1], row[2], row[8]]).toEqual(["Copper mid", 262.47, "Neighbour"]);
  await retype("#partner", "Neighbour");
  await pane.locator("#partner-text").fill("Disc\tCarry\nCopper mid\t80");
  await pane.locator("#partner-distances").selectOption("m");
  await until(async () => plain(await shown()).includes("0 throws to add, 1 already there"));
});

test("Share: freezes the Pocket sheet", async () => {
  await pane.getByRole("button", { name: "Make the Pocket sheet" }).click();
  await until(async () => (await shown()).includes("Pocket is ready"));
  expect(await opened.cell("Pocket!A1")).toBe("Pocket");
});

test("Set-up: says what is there, repairs and recalculates", async () => {
  await goTo("Set-up");
  await until(async () => (await shown()).includes("Ready"));
  await pane.getByRole("button", { name: "Repair formulas" }).click();
  await until(async () => /Wrote \d+/.test(await pane.locator(".notice").innerText()));
  await pane.getByRole("button", { name: "Recalculate" }).click();
  await until(async () => (await pane.locator(".notice").innerText()).includes("Recalculated."));
  await pane.getByRole("button", { name: "Fill empty tables" }).click();
  await until(async () =>
    (await pane.locator(".notice").innerText()).includes("Nothing was added"),
  );
});

test("nothing was asked of another machine", () => {
  expect(opened.outside).toEqual([]);
});
