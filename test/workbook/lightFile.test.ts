/** A light workbook and its file. The judge of what was written is the .xlsx library. */
import { starterBlueprint } from "../../src/workbook/blueprint/index";
import { readBook, writeBook } from "../../src/workbook/file/bookBytes";
import { FilePort } from "../../src/workbook/file/filePort";
import { readLightFile, writeLightFile } from "../../src/workbook/light/lightFile";
import { LightPort } from "../../src/workbook/light/lightPort";
import { WorkbookPackage } from "../../src/workbook/package/workbookPackage";
import { handMadeWorkbook } from "../support/handMadeWorkbook";

const noKeeper = { keep: async () => {}, load: () => Promise.reject(new Error("not asked")) };

let starter: Uint8Array;
beforeAll(async () => {
  starter = await writeBook(FilePort.create(starterBlueprint()).book);
});

test("holds what the .xlsx library finds in the file", async () => {
  const port = new LightPort(readLightFile(starter), noKeeper);
  const judge = new FilePort(await readBook(starter));
  expect(await port.sheetNames()).toEqual(await judge.sheetNames());
  for (const table of await judge.tableNames())
    expect(await port.readTable(table)).toEqual(await judge.readTable(table));
  expect(await port.readRange("Settings")).toEqual(await judge.readRange("Settings"));
});

test("a file that nothing changed in comes back byte for byte", () => {
  const parts = partsOf(writeLightFile(starter, readLightFile(starter)));
  expect(parts).toEqual(partsOf(starter));
});

test("what was changed is in the file, and all other parts are as they were", async () => {
  const port = new LightPort(readLightFile(starter), noKeeper);
  const before = (await port.readTable("Throws"))!;
  const [first] = await port.addRows("Throws", [
    { Date: 46350, Disc: "Copper mid", Carry: 281.5, Note: '<into> & "out"' },
    { Disc: "Rose mid", Carry: 240 },
  ]);
  await port.changeRows("Bag", [{ index: 0, was: {}, becomes: { "In bag": "no" } }]);
  await port.removeRows("Course", [{ index: 1, was: {} }]);
  const settings = (await port.readRange("Settings"))!;
  await port.writeRange("Settings", [[settings[0]![0]!, "Partner"], ...settings.slice(1)]);

  const bytes = writeLightFile(starter, port.book);
  const judge = new FilePort(await readBook(bytes));
  const after = (await judge.readTable("Throws"))!;
  expect(after.rows).toHaveLength(before.rows.length + 2);
  expect(after.rows[first!]).toEqual(
    ["", "", "", "", "", "", "", "", "", ""].map(
      (blank, at) => [46350, "Copper mid", 281.5][at] ?? (at === 9 ? '<into> & "out"' : blank),
    ),
  );
  expect((await judge.readTable("Bag"))!.rows).toEqual((await port.readTable("Bag"))!.rows);
  const holes = (await judge.readTable("Course"))!.rows;
  expect(holes.slice(0, 3).map((row) => row[1])).toEqual(
    (await port.readTable("Course"))!.rows.slice(0, 3).map((row) => row[1]),
  );
  expect((await judge.readRange("Settings"))![0]![1]).toBe("Partner");

  const [was, is] = [partsOf(starter), partsOf(bytes)];
  const different = Object.keys(was).filter((path) => was[path] !== is[path]);
  expect(Object.keys(is)).toEqual(Object.keys(was));
  expect(
    different.every((path) => /^xl\/(worksheets\/sheet|tables\/table)\d\.xml$/.test(path)),
  ).toBe(true);
  // Read once more, it is the workbook of the phone, but for rows that the table keeps blank.
  expect(readLightFile(bytes).sheets.map(({ name }) => name)).toEqual(
    port.book.sheets.map(({ name }) => name),
  );
});

test("a new row of a table looks like the last one and gets its formulas and lists", () => {
  const file = handMadeWorkbook({
    sheets: {
      Log:
        '<sheetData><row r="1"><c r="A1" t="inlineStr"><is><t>Disc</t></is></c><c r="B1" t="inlineStr"><is><t>Carry</t></is></c><c r="C1" t="inlineStr"><is><t>Twice</t></is></c></row>' +
        '<row r="2"><c r="A2" s="3" t="inlineStr"><is><t>Copper mid</t></is></c><c r="B2" s="2"><v>270</v></c><c r="C2" s="1"><f>2*Throws[[#This Row],[Carry]]</f><v>540</v></c></row></sheetData>' +
        '<conditionalFormatting sqref="B2 F1"><cfRule type="expression" priority="1"><formula>B2&gt;300</formula></cfRule></conditionalFormatting>' +
        '<dataValidations count="1"><dataValidation type="list" sqref="A2"><formula1>"x"</formula1></dataValidation></dataValidations>',
    },
    tables: {
      Log: 'id="1" name="Throws" displayName="Throws" ref="A1:C2"><autoFilter ref="A1:C2"/><tableColumns count="3"><tableColumn id="1" name="Disc"/><tableColumn id="2" name="Carry"/><tableColumn id="3" name="Twice"><calculatedColumnFormula>2*Throws[[#This Row],[Carry]]</calculatedColumnFormula></tableColumn></tableColumns>',
    },
  });
  const book = readLightFile(file);
  const port = new LightPort(book, noKeeper);
  return port.addRows("Throws", [{ Disc: "Rose mid", Carry: 240 }]).then(() => {
    const parts = partsOf(writeLightFile(file, port.book));
    const sheet = parts["xl/worksheets/sheet1.xml"]!;
    expect(sheet).toContain(
      '<c r="A3" s="3" t="str"><v>Rose mid</v></c><c r="B3" s="2"><v>240</v></c>',
    );
    expect(sheet).toContain('<c r="C3" s="1"><f>2*Throws[[#This Row],[Carry]]</f></c>');
    expect(sheet).toContain('<conditionalFormatting sqref="B2:B3 F1">');
    expect(sheet).toContain('sqref="A2:A3"');
    expect(
      Object.values(parts)
        .join("")
        .match(/ref="A1:C3"/g),
    ).toHaveLength(2);
  });
});

test("says why a file is not taken", () => {
  const sheets = { Log: "<sheetData/>" };
  expect(() => readLightFile(new Uint8Array([1, 2, 3]))).toThrow("not an .xlsx workbook");
  expect(() => readLightFile(handMadeWorkbook({ sheets }))).toThrow("no table Throws");
  expect(() =>
    readLightFile(handMadeWorkbook({ sheets, workbookPr: '<workbookPr date1904="1"/>' })),
  ).toThrow("1904");
});

function partsOf(bytes: Uint8Array): Record<string, string> {
  const file = WorkbookPackage.read(bytes);
  return Object.fromEntries(file.paths.map((path) => [path, file.xml(path)]));
}
