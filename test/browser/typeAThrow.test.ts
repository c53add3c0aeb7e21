import { cardCells, readCard } from "../../src/core/carry/cardCells";
import { rowOf } from "../../src/core/carry/levelThrows";
import { planCourse } from "../../src/core/choice/plan";
import { readBag } from "../../src/core/log/readBag";
import { readCourse } from "../../src/core/log/readCourse";
import { readSettings } from "../../src/core/log/readSettings";
import { fromMetres } from "../../src/core/units";
import type { CellValue } from "../../src/workbook/port";
import { callIn } from "../workbook/starter/argumentsIn";
import { startSite, type Site, type BookPage } from "./support/bookPage";

/** A carry far from the disc's others, so that much must change. */
const CARRY = 250;

let site: Site;
let book: BookPage;
/** The cell that shows the smooth carry of one disc. */
let smoothAt = "";

beforeAll(async () => {
  site = await startSite();
  book = await site.open();
});
afterAll(() => site.close());

interface Shown {
  readonly smooth: CellValue;
  readonly card: CellValue[][];
  readonly plan: CellValue[][];
}

async function shown(): Promise<Shown> {
  const filled = (rows: CellValue[][]): CellValue[][] => rows.filter((row) => row[0] !== "");
  return {
    smooth: await book.cell(smoothAt),
    card: filled(await book.range("MyCard")),
    plan: filled(await book.range("MyPlan")),
  };
}

/** The same three answers from the core, with nothing but the tables and settings of the workbook. */
async function answered(
  disc: string,
): Promise<{ smooth: number; card: unknown[][]; plan: unknown[][] }> {
  const settings = readSettings(await book.range("Settings"));
  const throws = await book.table("Throws");
  const card = readCard(throws, readBag(await book.table("Bag")), settings);
  const printed = cardCells(card, settings);
  const holes = readCourse(await book.table("Course"), settings);
  const plan = planCourse(holes, readCard(printed, null, settings), settings);
  return {
    // SMOOTH is not given the bag, so it goes by the distance instead of the disc's type.
    smooth: fromMetres(Math.exp(rowOf(readCard(throws, null, settings), disc).mu), "ft"),
    card: printed,
    plan: plan.map(({ hole, option }) => [
      Number(hole),
      option!.disc,
      option!.power,
      option!.chance,
    ]),
  };
}

const near = (value: unknown): unknown =>
  typeof value === "number" ? expect.closeTo(value, 6) : value;

it("typing a throw under the log changes SMOOTH, card and plan to what the core answers", async () => {
  const smooth = (await book.formulas()).find(({ formula }) => formula.includes("CARRY.SMOOTH("))!;
  smoothAt = smooth.ref;
  const [sheet] = smooth.ref.split("!");
  const disc = String(await book.cell(`${sheet}!${callIn(smooth.formula).arguments[0]}`));
  const before = await shown();
  const rows = (await book.table("Throws")).length;

  const first = 5 + rows;
  await book.type(`Log!A${first}`, "2026-11-24", "Tab", disc, "Tab", String(CARRY), "Enter");

  await book.until(async () => (await book.table("Throws")).at(-1)![2] === CARRY);
  await book.calculated();
  const throws = await book.table("Throws");
  expect(throws).toHaveLength(rows + 1);
  expect(throws.at(-1)!.slice(0, 3)).toEqual([46350, disc, CARRY]);

  const after = await shown();
  const core = await answered(disc);
  expect(after.smooth).toEqual(near(core.smooth));
  expect(after.smooth).not.toEqual(before.smooth);
  expect(after.card).toEqual(core.card.map((row) => row.map(near)));
  expect(after.card).not.toEqual(before.card);
  const picks = after.plan.slice(1).map((row) => [row[0], row[4], row[5], row[7]]);
  expect(picks).toEqual(core.plan.map((row) => row.map(near)));
  expect(after.plan).not.toEqual(before.plan);
  expect(book.complaints).toEqual([]);
  expect(book.outside).toEqual([]);
});
