import reviewed from "../reviewed/functions.json";
import { DATA_TABLES } from "../../src/workbook/blueprint/dataTables";
import { emptyBlueprint, starterBlueprint } from "../../src/workbook/blueprint";
import type { Blueprint, SheetPlan, TablePlan } from "../../src/workbook/blueprint/types";

/** Names that files depend on; a change here breaks the workbooks people have. */
const SHEETS = ["Start", "Log", "Discs", "Card", "Holes", "Rounds"];
const TABLES = { Throws: "Log", Bag: "Discs", Course: "Holes", Results: "Rounds", Putts: "Rounds" };
const NAMES = ["MyCard", "MyPlan", "PhoneNotes", "Putting", "Settings"];
const FUNCTIONS = reviewed.functions.map(({ id }) => id);

const columnNumber = (letters: string): number =>
  [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0);

interface Box {
  readonly what: string;
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

function boxes(sheet: SheetPlan): Box[] {
  return sheet.blocks.map((block) => {
    const [, letters = "", digits = ""] = /^([A-Z]+)(\d+)$/.exec(block.at) ?? [];
    const left = columnNumber(letters);
    const top = Number(digits);
    const [width, height] =
      block.kind === "table"
        ? [block.columns.length, Math.max(block.rows.length, block.least ?? 0) + 1]
        : block.kind === "cells"
          ? [Math.max(...block.values.map((row) => row.length)), block.values.length]
          : [block.spill?.columns ?? 1, block.spill?.rows ?? 1];
    return {
      what: `${block.kind} ${block.at}`,
      left,
      top,
      right: left + width - 1,
      bottom: top + height - 1,
    };
  });
}

const meet = (a: Box, b: Box): boolean =>
  a.left <= b.right && b.left <= a.right && a.top <= b.bottom && b.top <= a.bottom;
const tables = (book: Blueprint): (TablePlan & { sheet: string })[] =>
  book.sheets.flatMap((sheet) =>
    sheet.blocks.flatMap((block) =>
      block.kind === "table" ? [{ ...block, sheet: sheet.name }] : [],
    ),
  );
const formulas = (book: Blueprint): string[] =>
  book.sheets.flatMap((sheet) =>
    sheet.blocks.flatMap((block) =>
      block.kind === "formula"
        ? [block.formula]
        : block.kind === "table"
          ? block.columns.flatMap(({ formula }) => formula ?? [])
          : [],
    ),
  );

describe.each([
  ["starter", starterBlueprint()],
  ["empty", emptyBlueprint()],
])("%s blueprint", (_, book) => {
  test("keeps the names that files depend on", () => {
    expect(book.sheets.map(({ name }) => name)).toEqual(SHEETS);
    expect(Object.fromEntries(tables(book).map(({ name, sheet }) => [name, sheet]))).toEqual(
      TABLES,
    );
    expect(Object.values(DATA_TABLES).sort()).toEqual(Object.keys(TABLES).sort());
    const names = book.sheets.flatMap(({ blocks }) =>
      blocks.flatMap((block) => (block.kind !== "table" && block.name ? [block.name] : [])),
    );
    expect(names.sort()).toEqual(NAMES);
  });

  test("names no table as a sheet, nor with an underscore", () => {
    for (const { name } of tables(book)) {
      expect(SHEETS).not.toContain(name);
      expect(name).not.toContain("_");
    }
  });

  test("shows every function at work", () => {
    const used = formulas(book).flatMap((formula) =>
      [...formula.matchAll(/CARRY\.([A-Z]+)\(/g)].map((match) => match[1]),
    );
    expect([...new Set(used)].sort()).toEqual([...FUNCTIONS].sort());
  });

  test.each(book.sheets.map((sheet) => [sheet.name, sheet] as const))(
    "leaves every spill and table of %s room",
    (_name, sheet) => {
      const all = boxes(sheet);
      const roomy = all.filter((_box, index) => sheet.blocks[index]?.kind !== "cells");
      for (const box of roomy) {
        const inTheWay = all.filter((other) => other !== box && meet(other, box));
        expect({ box: box.what, inTheWay: inTheWay.map(({ what }) => what) }).toEqual({
          box: box.what,
          inTheWay: [],
        });
      }
    },
  );

  test("gives every row of a table one value a column", () => {
    for (const table of tables(book))
      for (const row of table.rows) expect(row).toHaveLength(table.columns.length);
  });
});

test("empty blueprint holds no rows", () => {
  for (const { rows } of tables(emptyBlueprint())) expect(rows).toEqual([]);
});
