/** Formulas of ours in Excel: found in whatever form, written back, never spilled cells. */
import { openExcel } from "./support/openExcel";

function opened() {
  const { host, port } = openExcel();
  const sheet = host.book.sheet("Mine");
  const put = (row: number, column: number, formula: string, spilledFrom?: string): void =>
    sheet.put(row, column, {
      ...{ value: "#NAME?", kind: "Error", formula },
      ...(spilledFrom === undefined ? {} : { spilledFrom }),
    });
  put(1, 1, "=CARRY.AIR()");
  put(2, 1, "=_xldudf_CARRY_LEVEL(100,3)");
  put(3, 1, '=IF(A1="","CARRY.AIR(",1)');
  put(4, 1, "=1+carry.rise(2,3)");
  put(10, 2, "=CARRY.CARD(X1:Y9)", "B10");
  put(11, 2, "=CARRY.CARD(X1:Y9)", "B10");
  put(10, 3, "=CARRY.CARD(X1:Y9)", "B10");
  return { host, port, sheet };
}

test("finds each formula once, where it starts", async () => {
  const { host, port } = opened();
  expect(await port.ourFormulas()).toEqual([
    { ref: "Mine!A1", formula: "=CARRY.AIR()" },
    { ref: "Mine!A2", formula: "=CARRY.LEVEL(100,3)" },
    { ref: "Mine!A4", formula: "=1+carry.rise(2,3)" },
    { ref: "Mine!B10", formula: "=CARRY.CARD(X1:Y9)" },
  ]);
  expect(host.unknown).toEqual([]);
});

test("writes them back in their own form and touches nothing else", async () => {
  const { host, port, sheet } = opened();
  const spilled = sheet.at(11, 2);
  expect(await port.repairFormulas()).toBe(4);
  expect(sheet.at(2, 1)!.formula).toBe("=CARRY.LEVEL(100,3)");
  expect(sheet.at(11, 2)).toBe(spilled);
  expect(sheet.at(3, 1)!.value).toBe("#NAME?");
  expect(host.unknown).toEqual([]);
});

test("tells how far it is, and stops when it is asked to", async () => {
  const { port, sheet } = opened();
  for (let row = 20; row < 100; row++)
    sheet.put(row, 1, { value: 0, kind: "Double", formula: "=CARRY.AIR()" });
  const stop = new AbortController();
  const told: number[][] = [];
  const count = await port.repairFormulas((done, total) => {
    told.push([done, total]);
    if (done >= 40) stop.abort();
  }, stop.signal);
  expect(told).toEqual([
    [20, 84],
    [40, 84],
  ]);
  expect(count).toBe(40);
});

test("this row is written in full, as files and the other workbooks have it", async () => {
  const { host, port, sheet } = opened();
  host.book.addTable(sheet, { top: 30, left: 5, bottom: 32, right: 6 }).name = "Course";
  sheet.put(1, 1, {
    value: 0,
    kind: "Double",
    formula: "=CARRY.LEVEL(Course[@Range],Course[@[My angle]])",
  });
  expect((await port.ourFormulas())[0]!.formula).toBe(
    "=CARRY.LEVEL(Course[[#This Row],[Range]],Course[[#This Row],[My angle]])",
  );
});
