import {
  areaRef,
  cellRef,
  columnLetters,
  fixedRef,
  readArea,
  readSheetArea,
  readSpot,
} from "../../src/workbook/a1";

/** Column letters as every spreadsheet writes them; XFD is the last of the file format (ECMA-376). */
test.each([
  [1, "A"],
  [26, "Z"],
  [27, "AA"],
  [702, "ZZ"],
  [703, "AAA"],
  [16384, "XFD"],
])("column %d is %s", (column, letters) => {
  expect(columnLetters(column)).toBe(letters);
  expect(readSpot(`${letters}7`)).toEqual({ row: 7, column });
  expect(cellRef({ row: 7, column })).toBe(`${letters}7`);
});

test("reads areas in any order of corners, fixed or not", () => {
  const area = { top: 2, left: 1, bottom: 9, right: 3 };
  for (const text of ["A2:C9", "$A$2:$C$9", "C9:A2", "c2:a9"]) expect(readArea(text)).toEqual(area);
  expect(areaRef(area)).toBe("A2:C9");
  expect(areaRef({ ...area, bottom: 2, right: 1 })).toBe("A2");
});

test.each(["", "A", "7", "A0", "A1:B", "A1:B2:C3", "AAAA1", "Settings"])("%j is no area", (text) =>
  expect(readArea(text)).toBeNull(),
);

test("keeps sheets with quotes, spaces and marks", () => {
  for (const sheet of ["Log", "My log", "Ann's", "2026", "a!b"]) {
    const area = { top: 1, left: 1, bottom: 2, right: 2 };
    expect(readSheetArea(fixedRef(sheet, area))).toEqual({ sheet, area });
  }
  expect(readSheetArea("A1:B2")).toBeNull();
  expect(readSheetArea("Log!Settings")).toBeNull();
});
