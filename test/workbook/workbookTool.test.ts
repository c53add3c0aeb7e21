/** `npm run workbook`, as it is run. Needs what stands in dist. */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readBook } from "../../src/workbook/file/bookBytes";
import { cellsAt, fromFile } from "../../src/workbook/file/cellValues";

jest.setTimeout(120_000);

const folder = mkdtempSync(join(tmpdir(), "carrybook-tool-"));
afterAll(() => rmSync(folder, { recursive: true }));

const command = (from: string, to: string): string[] => [
  join(__dirname, "../../node_modules/tsx/dist/cli.mjs"),
  join(__dirname, "../../src/tools/workbook.ts"),
  join(folder, from),
  join(folder, to),
];

test("a .csv becomes a workbook with its card worked out", async () => {
  writeFileSync(
    join(folder, "in.csv"),
    "Date,Disc,Carry\n2026-05-12,Copper mid,271\n5/12/2026,A,1",
  );
  const said = execFileSync(process.execPath, command("in.csv", "out.xlsx"), { encoding: "utf8" });
  expect(said).toContain("in.csv: 2 rows: 1 counts, 1 does not. Row 7: 5/12/2026 can be read");
  const book = await readBook(readFileSync(join(folder, "out.xlsx")));
  const { sheet, area } = cellsAt(book, "MyCard")!;
  const cell = (row: number, column: number): unknown =>
    fromFile(sheet.getCell(area.top + row, area.left + column).value);
  expect([cell(0, 0), cell(1, 0)]).toEqual(["Disc", "Copper mid"]);
});

test("what is no workbook is named as such", () => {
  writeFileSync(join(folder, "junk.xlsx"), "hello");
  const { status, stderr } = spawnSync(process.execPath, command("junk.xlsx", "out.xlsx"), {
    encoding: "utf8",
  });
  expect(status).toBe(1);
  expect(stderr).toContain("This is not an .xlsx workbook or a .csv file.");
});
