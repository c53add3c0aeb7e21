import type { CellValue } from "../../../src/workbook/port";
import { BookInHand, type Typed } from "./bookInHand";
import { twiceBundle } from "./twiceBundle";

/** Formulas that read what others spill, while the spills grow, shrink, go and get in each other's way. */
let book: BookInHand;

async function typeAll(cells: Readonly<Record<string, Typed>>): Promise<void> {
  await book.type("Mine", cells);
  await book.settled();
}
const values = (...refs: readonly string[]): Promise<CellValue[]> => book.values("Mine", ...refs);
const valueOf = async (ref: string): Promise<CellValue> => (await values(ref))[0]!;

beforeEach(async () => {
  book = await BookInHand.open({ sheets: [{ name: "Mine", blocks: [] }] }, twiceBundle);
});
afterEach(() => book.close());

describe("formulas that read a spill", () => {
  it("follow it when it shrinks and grows again", async () => {
    await typeAll({ A1: 10, A3: "=SEQUENCE(A1)", C1: "=SUM(A3:A22)", C2: "=SUM(A4:A22)" });
    expect(await values("C1", "C2")).toEqual([55, 54]);
    await typeAll({ A1: 3 });
    expect(await values("C1", "C2", "A6")).toEqual([6, 5, ""]);
    await typeAll({ A1: 9 });
    expect(await values("C1", "C2", "A11")).toEqual([45, 44, 9]);
    await typeAll({ A1: 1 });
    expect(await values("C1", "C2", "A4")).toEqual([1, 0, ""]);
  });

  it("follow cells far from its formula, one by one", async () => {
    await typeAll({ A1: 10, A3: "=SEQUENCE(A1)", C1: "=A12*2", C2: "=COUNT(A8:A12)" });
    expect(await values("C1", "C2")).toEqual([20, 5]);
    await typeAll({ A1: 9 });
    expect(await values("C1", "C2")).toEqual([0, 4]);
  });

  it("follow when its formula goes, comes back, or becomes an error or one value", async () => {
    await typeAll({ A1: 5, A3: "=SEQUENCE(A1)", C1: "=SUM(A4:A22)" });
    expect(await valueOf("C1")).toBe(14);
    await typeAll({ A3: null });
    expect(await valueOf("C1")).toBe(0);
    await book.undo();
    await book.settled();
    expect(await values("C1", "A7")).toEqual([14, 5]);
    await book.redo();
    await book.settled();
    expect(await values("C1", "A7")).toEqual([0, ""]);
    await typeAll({ A3: "=SEQUENCE(A1)" });
    expect(await valueOf("C1")).toBe(14);
    await typeAll({ A3: "=1/0" });
    expect(await values("C1", "A5")).toEqual([0, ""]);
  });

  it("follow through a chain of spills that each read only the rest of the one before", async () => {
    await typeAll({ A1: 8, A3: "=SEQUENCE(A1)" });
    await typeAll({ B3: "=SEQUENCE(COUNT(A4:A22))", C3: "=SEQUENCE(COUNT(B4:B22))" });
    await typeAll({ D3: "=SEQUENCE(COUNT(C4:C22))", E1: "=SUM(D4:D22)" });
    expect(await values("B9", "C8", "D7", "E1")).toEqual([7, 6, 5, 14]);
    await typeAll({ A1: 6 });
    expect(await values("B9", "C8", "D7", "E1")).toEqual(["", "", "", 5]);
    await typeAll({ A1: 12 });
    expect(await valueOf("E1")).toBe(44);
  });

  it("read the first cell of one spill and the rest of another", async () => {
    await typeAll({ A1: 4, A3: "=SEQUENCE(A1)", B2: "=SEQUENCE(A1+1)", C1: "=SUM(A3:B3)" });
    expect(await valueOf("C1")).toBe(1 + 2);
    await typeAll({ B2: "=SEQUENCE(A1,1,A1)" });
    expect(await valueOf("C1")).toBe(1 + 5);
    await typeAll({ A1: 1 });
    expect(await valueOf("C1")).toBe(1);
  });

  it("look up in it only what it holds now", async () => {
    await typeAll({ A1: 9, A3: "=SEQUENCE(A1)", C1: "=IFERROR(MATCH(8,A3:A22,0),-1)" });
    await typeAll({ C2: '=IFERROR(VLOOKUP(8,A3:A22,1,FALSE),"none")' });
    expect(await values("C1", "C2")).toEqual([8, 8]);
    await typeAll({ A1: 5 });
    expect(await values("C1", "C2")).toEqual([-1, "none"]);
  });

  it("see the cells that it has when it has no room, and all of it once there is room", async () => {
    await typeAll({ A1: 6, A3: "=SEQUENCE(A1)", C1: "=SUM(A4:A22)" });
    await typeAll({ A6: 100 });
    expect(await values("A3", "A4", "C1")).toEqual([{ error: "#SPILL!" }, "", 100]);
    await typeAll({ A6: null });
    expect(await values("A3", "A4", "C1")).toEqual([1, 2, 20]);
  });

  it("see a spill that got room when another made way", async () => {
    await typeAll({ A1: 6, A3: "=SEQUENCE(A1)", A6: null, C1: "=SUM(A7:C9)" });
    await typeAll({ A2: 3, B1: 4, A9: "=SEQUENCE(1,3)" });
    await typeAll({ A1: 9 });
    expect(await valueOf("A3")).toEqual({ error: "#SPILL!" });
    await typeAll({ A1: 4 });
    expect(await values("A3", "A6", "C1")).toEqual([1, 4, 6]);
    // The row 7 to 9 of B belongs to the spill of B7 first; then A8 has room to the right.
    await typeAll({ A9: null, B5: "=SEQUENCE(B1)", A8: "=SEQUENCE(1,3)" });
    expect(await values("B5", "B8", "A8")).toEqual([1, 4, { error: "#SPILL!" }]);
    await typeAll({ B1: 3 });
    expect(await values("B7", "A8", "B8", "C8", "C1")).toEqual([3, 1, 2, 3, 9]);
  });
});
