import type { Workbook } from "@cj-tech-master/excelts";
import type { Blueprint } from "../../src/workbook/blueprint/types";
import { readBook, writeBook } from "../../src/workbook/file/bookBytes";
import { calculate, withoutUs } from "../../src/workbook/file/calculate";
import { fromFile } from "../../src/workbook/file/cellValues";
import { FilePort } from "../../src/workbook/file/filePort";
import type { CellValue } from "../../src/workbook/port";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { readSheetArea } from "../../src/workbook/a1";
import { askLibreOffice, hasLibreOffice } from "../support/libreOffice";

jest.setTimeout(240_000);

const blueprint: Blueprint = {
  sheets: [
    {
      name: "Card",
      blocks: [
        { kind: "cells", at: "A1", values: [["Card"]], name: "Heading" },
        {
          kind: "formula",
          at: "A3",
          formula: "=CARRY.CARD(Throws[#All])",
          name: "MyCard",
          spill: { rows: 9, columns: 3 },
        },
        { kind: "formula", at: "F3", formula: "=CARRY.AIR()" },
        { kind: "formula", at: "F4", formula: "=1+1" },
        { kind: "formula", at: "F5", formula: "=LATER(A1)" },
      ],
    },
    {
      name: "Log",
      blocks: [
        {
          kind: "table",
          name: "Throws",
          at: "A1",
          columns: [
            { header: "Disc", width: 12 },
            { header: "Twice", width: 8, formula: "=2*2" },
          ],
          rows: [["Copper mid", ""]],
        },
      ],
    },
  ],
};

/** A stand-in for a program that calculates: a sheet of values by cell, blank elsewhere. */
const showing =
  (sheets: Record<string, Record<string, CellValue>>, seen: Blueprint[] = []) =>
  async (given: Blueprint) => {
    seen.push(given);
    return {
      port: {
        readRange: async (ref: string): Promise<CellValue[][]> => {
          const { sheet, area } = readSheetArea(ref)!;
          return Array.from({ length: area.bottom - area.top + 1 }, (_, row) =>
            Array.from({ length: area.right - area.left + 1 }, (__, column) => {
              const letter = String.fromCharCode(64 + area.left + column);
              return sheets[sheet]?.[`${letter}${area.top + row}`] ?? "";
            }),
          );
        },
      },
      close: () => {},
    };
  };

const card = (rows: readonly (readonly CellValue[])[]): Record<string, CellValue> =>
  Object.fromEntries(
    rows.flatMap((row, down) =>
      row.map((value, right) => [`${String.fromCharCode(65 + right)}${3 + down}`, value]),
    ),
  );
const LONG = card([
  ["Disc", "Carry", "Low"],
  ["Copper mid", 270, 250],
  ["Slate putter", 205, ""],
]);
const SHORT = card([
  ["Disc", "Carry", "Low"],
  ["Copper mid", 271, 251],
]);
const values = (book: Workbook, sheet: string, cells: readonly string[]): CellValue[] =>
  cells.map((cell) => fromFile(book.getWorksheet(sheet)!.getCell(cell).value));

test("stores the values of single cells, tables and spills", async () => {
  const { book } = FilePort.create(blueprint);
  const seen: Blueprint[] = [];
  await calculate(
    book,
    showing({ Card: { ...LONG, F3: 0.98, F4: 2, F5: { error: "#NAME?" } }, Log: { B2: 4 } }, seen),
  );
  const again = await readBook(await writeBook(book));
  expect(values(again, "Card", ["A3", "B4", "A5", "C5", "F3", "F4"])).toEqual([
    ...["Disc", 270, "Slate putter", "", 0.98, 2],
  ]);
  expect(values(again, "Log", ["B2"])).toEqual([4]);
  expect(again.getWorksheet("Card")!.getCell("A3").value).toMatchObject({
    formula: "_xldudf_CARRY_CARD(Throws[#All])",
    ref: "A3:C5",
    shareType: "array",
    isDynamicArray: true,
  });
  const tables = seen[0]!.sheets[1]!.blocks.filter(({ kind }) => kind === "table");
  expect(tables).toMatchObject([{ name: "Throws", rows: [["Copper mid", ""]] }]);
});

test("clears what a spill no longer fills, and works a file out again the same", async () => {
  const { book } = FilePort.create(blueprint);
  await calculate(book, showing({ Card: LONG }));
  await calculate(book, showing({ Card: SHORT }));
  expect(values(book, "Card", ["A4", "B4", "A5", "B5"])).toEqual(["Copper mid", 271, "", ""]);
  const saved = await writeBook(book);
  const again = await readBook(saved);
  await calculate(again, showing({ Card: SHORT }));
  expect(Buffer.compare(await writeBook(again), saved)).toBe(0);
});

test("keeps the last value of a function that the program does not know", async () => {
  const { book } = FilePort.create(blueprint);
  const cell = book.getWorksheet("Card")!.getCell("F5");
  cell.value = { formula: "LATER(A1)", result: 7 };
  await calculate(book, showing({ Card: { F5: { error: "#NAME?" }, F3: { error: "#N/A" } } }));
  expect(values(book, "Card", ["F5", "F3"])).toEqual([7, { error: "#N/A" }]);
});

test("a plain copy keeps plain formulas and holds the values of ours", async () => {
  const { book } = FilePort.create(blueprint);
  await calculate(book, showing({ Card: { ...LONG, F3: 0.98, F4: 2 } }));
  withoutUs(book);
  const port = new FilePort(await readBook(await writeBook(book)));
  expect(await port.ourFormulas()).toEqual([]);
  expect(values(port.book, "Card", ["A3", "B4", "F3"])).toEqual(["Disc", 270, 0.98]);
  expect(port.book.getWorksheet("Card")!.getCell("F4").formula).toBe("1+1");
});

(hasLibreOffice() ? test : test.skip)("LibreOffice shows the last values", async () => {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-"));
  try {
    const { book } = FilePort.create(blueprint);
    await calculate(book, showing({ Card: { ...LONG, F3: 0.98, F4: 2 }, Log: { B2: 4 } }));
    withoutUs(book);
    const file = join(folder, "plain.xlsx");
    writeFileSync(file, await writeBook(book));
    const outputs = ["A3", "B4", "A5", "F3", "F4"];
    expect(askLibreOffice({ file, sheet: "Card", inputs: ["H1"], outputs }, [[1]])).toEqual([
      ["Disc", 270, "Slate putter", 0.98, 2],
    ]);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
