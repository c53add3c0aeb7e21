import "../../../src/page/iteratorSome";
import { openHeadless } from "../../../src/page/headless";
import { workbookBytes } from "../../../src/page/files";
import { EmbeddedWorkbook } from "../../../src/workbook/embedded";
import { openWorkbook } from "../../../src/workbook/embedded/open";
import { readBook } from "../../../src/workbook/file/bookBytes";
import { FilePort } from "../../../src/workbook/file/filePort";
import { contractBlueprint } from "../contractBlueprint";
import { twiceBundle } from "./twiceBundle";

async function opened(): Promise<{ port: EmbeddedWorkbook; close(): void }> {
  const { engine, calculation } = openWorkbook(contractBlueprint, { bundle: twiceBundle });
  const port = new EmbeddedWorkbook(engine, calculation);
  await calculation.settled();
  return { port, close: () => engine.univer.dispose() };
}

describe("the workbook as it stands", () => {
  it("makes the same workbook again", async () => {
    const { port, close } = await opened();
    await port.addRows("Throws", [
      { Disc: "Mint fairway", Carry: 344 },
      { Carry: 1 },
      { Carry: 2 },
    ]);
    await port.writeRange("Discs!A9:B9", [["own", 12]]);
    await port.writeRange("Limits", [
      ["Longest", 400],
      ["Ready", false],
      ["Blank", "x"],
    ]);
    await port.recalculate();
    const again = await openHeadless({ sheets: port.plans() }, twiceBundle);
    for (const table of ["Throws", "Bag"])
      expect(await again.port.readTable(table)).toEqual(await port.readTable(table));
    for (const ref of ["Log!A1:F12", "Discs!A1:J12", "Limits", "Twice"])
      expect(await again.port.readRange(ref)).toEqual(await port.readRange(ref));
    expect(await again.port.ourFormulas()).toEqual(await port.ourFormulas());
    again.close();
    close();
  });

  it("goes into a file with the values that its formulas have", async () => {
    const { port, close } = await opened();
    await port.addRows("Throws", [{ Disc: "Mint fairway", Carry: 344 }]);
    await port.recalculate();
    const file = new FilePort(await readBook(await workbookBytes(port, false)));
    expect((await file.readTable("Throws"))!.rows[3]).toEqual(["", "Mint fairway", 344, "", 688]);
    expect(await file.readRange("Twice")).toEqual([[700]]);
    expect(await file.ourFormulas()).toEqual(await port.ourFormulas());
    close();
  });
});
