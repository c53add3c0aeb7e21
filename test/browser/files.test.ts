/** Files on the page: a workbook of ours comes back as it was saved; of another one the player chooses. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import type { Locator } from "playwright-core";
import { readWhole } from "../../src/workbook/file/readWhole";
import { fileOf } from "../../src/workbook/file/writeBook";
import { WorkbookPackage } from "../../src/workbook/package/workbookPackage";
import { handMadeWorkbook } from "../support/handMadeWorkbook";
import { type BookPage, type Site, startSite } from "./support/bookPage";

let site: Site;
let book: BookPage;
let pane: Locator;

beforeAll(async () => {
  site = await startSite();
  book = await site.open();
  pane = book.page.locator("#pane");
  await pane.locator("#pick").waitFor();
  await pane.getByRole("tab", { name: "Share" }).click();
});
afterAll(() => site?.close());

const give = (name: string, bytes: Uint8Array): Promise<void> =>
  pane.locator("#open-file").setInputFiles({
    name,
    mimeType: "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    buffer: Buffer.from(bytes),
  });

/** The starter with a note and a formula of the player's own. */
function ours(): Uint8Array {
  const bytes = readFileSync(join(__dirname, "../../dist/carrybook-starter.xlsx"));
  const { book: whole } = readWhole(WorkbookPackage.read(bytes));
  const rounds = whole.sheets.find(({ name }) => name === "Rounds")!;
  rounds.cells.set(30, [...(rounds.cells.get(30) ?? [])]);
  rounds.cells.get(30)![16] = { value: "shoes were wet" };
  rounds.cells.set(31, [...(rounds.cells.get(31) ?? [])]);
  rounds.cells.get(31)![16] = { value: 0, formula: "=6*7" };
  return fileOf(whole);
}

const foreign = handMadeWorkbook({
  sheets: {
    Field:
      '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Disc</t></is></c><c r="B1" t="inlineStr"><is><t>Carry</t></is></c></row>' +
      '<row r="2"><c r="A2" t="inlineStr"><is><t>Copper mid</t></is></c><c r="B2"><v>301</v></c><c r="C2"><f>B2*2</f><v>602</v></c></row></sheetData>' +
      '<sheetProtection sheet="1"/>',
  },
});

it("opens a workbook of ours as it was saved", async () => {
  await give("mine.xlsx", ours());
  await pane.getByText(/Opened mine.xlsx: \d+ sheets\./).waitFor();
  expect(await book.cell("Rounds!P30")).toBe("shoes were wet");
  expect(await book.cell("Rounds!P31")).toBe(42);
});

it("names what another workbook would lose, and leaves it when told to", async () => {
  const before = await book.table("Throws");
  await give("theirs.xlsx", foreign);
  await book.page
    .getByText(
      "theirs.xlsx is another kind of workbook. This page cannot keep: its protection on Field.",
    )
    .waitFor();
  await book.page.getByRole("button", { name: "Leave it" }).click();
  await pane.getByText("theirs.xlsx was not opened. The workbook is as it was.").waitFor();
  expect(await book.table("Throws")).toEqual(before);
});

it("takes its throws", async () => {
  await give("theirs.xlsx", foreign);
  await book.page.getByRole("button", { name: "Take the throws" }).click();
  await pane.getByText("Opened theirs.xlsx: 1 row, and it counts.").waitFor();
  const [, first] = await book.table("Throws");
  expect(first!.slice(1, 3)).toEqual(["Copper mid", 301]);
});

it("opens it whole, and takes that back", async () => {
  const before = await book.table("Throws");
  await give("theirs.xlsx", foreign);
  await book.page.getByRole("button", { name: "Open it whole" }).click();
  await pane.getByText("Opened theirs.xlsx whole: 1 sheet.").waitFor();
  expect(await book.cell("Field!C2")).toBe(602);
  await pane.getByRole("button", { name: "Undo" }).first().click();
  await pane.getByText("Taken back: opening theirs.xlsx.").waitFor();
  expect(await book.table("Throws")).toEqual(before);
});

it("complains of nothing", () => expect(book.complaints).toEqual([]));
