/** What Excel makes of text: all that we write comes back as the text it was. */
import { contractBlueprint } from "../workbook/contractBlueprint";
import { openExcel } from "./support/openExcel";

const { host, port } = openExcel();
beforeAll(() => port.build(contractBlueprint));
afterAll(() => expect(host.unknown).toEqual([]));

test.each([
  ...["Copper mid", "=1+1", "+5", "-3", "@home", "1/2", "3-4", "2026-11-25", "10%", "1e5", "007"],
  ...[
    "TRUE",
    "false",
    "true north",
    "'quoted",
    "''",
    "#N/A",
    "#5",
    "Éclair",
    "naïve",
    " space",
    "x",
  ],
])("%j stays text", async (text) => {
  await port.writeRange("Discs!J1", [[text]]);
  expect(await port.readRange("Discs!J1")).toEqual([[text]]);
});

test("plain words go in without a mark, so that nothing shows in the cell", () => {
  const values = host.book.sheet("Log").at(4, 2);
  expect(values).toEqual({ value: "Copper mid", kind: "String" });
});

test("an error cell is an error, the same letters typed are text", async () => {
  await port.writeRange("Discs!J1", [[{ error: "#N/A" }]]);
  expect(await port.readRange("Discs!J1")).toEqual([[{ error: "#N/A" }]]);
});
