import { startSite, type Site, type BookPage } from "./support/bookPage";

let site: Site;
let book: BookPage;

beforeAll(async () => {
  site = await startSite();
  book = await site.open();
});
afterAll(() => site.close());

describe("the embedded workbook in a browser", () => {
  it("shows the starter workbook and the pane", async () => {
    const names = ["Start", "Log", "Discs", "Card", "Holes", "Rounds"];
    const bar = await book.page.locator("#grid").innerText();
    for (const name of names) expect(bar).toContain(name);
    await book.page.locator("#pane").getByText("Plays like").first().waitFor();
  });

  it("helps to type a formula and works it out", async () => {
    const { page } = book;
    await page.evaluate("carrybook.port.show('Start!C40')");
    await page.keyboard.type("=CARRY.BE", { delay: 30 });
    await page.getByText("CARRY.BEST", { exact: true }).waitFor();
    await page.keyboard.type("ST(327", { delay: 30 });
    await page.getByText("throws,", { exact: true }).waitFor();
    await page.keyboard.type(", Throws[#All], Settings)", { delay: 30 });
    await page.keyboard.press("Enter");
    await book.calculated();
    const discs = (await book.range("Discs!A6:A30")).flat();
    expect(discs).toContain(await book.cell("Start!C40"));
  });

  it("says in words why a cell shows an error", async () => {
    await book.type("Start!C41", '=CARRY.SMOOTH("No such disc",Throws[#All],Settings)', "Enter");
    expect(await book.cell("Start!C41")).toMatchObject({ error: "#N/A" });
    await book.page.evaluate("carrybook.port.show('Start!C41')");
    const line = book.page.locator("#why");
    await line.waitFor();
    expect(await line.innerText()).toContain("No such disc");
  });

  it("takes rows that are pasted under a table into it", async () => {
    const { page } = book;
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    const rows = (await book.table("Throws")).length;
    await page.evaluate(`carrybook.port.show("Log!A${5 + rows}")`);
    const pasted = ["2026-11-24\tCopper mid\t301", "2026-11-24\tMint fairway\t344"];
    await page.evaluate((lines) => navigator.clipboard.writeText(lines), pasted.join("\n"));
    await page.keyboard.press("ControlOrMeta+v");
    await book.until(async () => (await book.table("Throws")).length === rows + 2);
    expect((await book.table("Throws")).at(-1)!.slice(0, 3)).toEqual([46350, "Mint fairway", 344]);
  });

  it("asks nothing of any other machine, and complains of nothing", () => {
    expect(book.outside).toEqual([]);
    expect(book.complaints).toEqual([]);
  });
});
