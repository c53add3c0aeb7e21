/** A sheet of the size of Pocket in Excel: made, replaced in its place, in few and short requests. */
import type { SheetPlan } from "../../src/workbook/blueprint/types";
import { openExcel } from "./support/openExcel";

const GRID = Array.from({ length: 300 }, (_, row) =>
  Array.from({ length: 40 }, (_, column) => 200 + row / 3 + column / 7),
);
const plan: SheetPlan = {
  name: "Pocket",
  widths: [16, 18],
  frozenRows: 3,
  blocks: [
    { kind: "cells", at: "A1", values: [["Pocket"]], style: "title" },
    { kind: "cells", at: "A5", values: [["Range", 300]], styles: ["label", "input"], name: "Shot" },
    {
      kind: "formula",
      at: "B9",
      formula: "=INDEX($Z$30:$BM$329,3,4)",
      style: "answer",
      format: "0",
    },
    { kind: "cells", at: "Z30", values: GRID, style: "hint" },
  ],
  print: { landscape: false, fitWide: true, area: "A1:C20" },
};

test("is made once, replaced in its place, and nothing else is touched", async () => {
  const { host, port } = openExcel();
  host.type("Mine", 1, 1, "mine");
  const mine = JSON.stringify([...host.book.sheet("Mine").cells]);

  await port.replaceSheet(plan);
  expect(host.syncs).toBeLessThanOrEqual(12);
  expect(host.longest).toBeLessThan(1_000_000);
  const first = host.book.picture();
  host.book.addSheet("After");
  host.type("Pocket", 400, 30, "stray");
  await port.replaceSheet(plan);
  expect(host.book.sheets.map(({ name }) => name)).toEqual(["Mine", "Pocket", "After"]);
  expect(host.book.sheet("Pocket").at(400, 30)).toBeUndefined();
  host.book.removeSheet(host.book.sheet("After"));
  expect(host.book.picture()).toBe(first);
  expect(JSON.stringify([...host.book.sheet("Mine").cells])).toBe(mine);
  expect(await port.readRange("Pocket!AA30:AB31")).toEqual(
    GRID.slice(0, 2).map((row) => row.slice(1, 3)),
  );
  expect(host.unknown).toEqual([]);
});
