/**
 * What the pane reads of Excel after one throw was changed in a log of 20,000 rows, over the real
 * client library and an Excel in memory: requests, and letters of the answers against one reading
 * of the whole log.
 *
 * The log is read whole again. Excel tells which cells were typed into, but its events differ by
 * version for sorting, undo and co-authors, and are lost at times (see watch.ts): rows kept from an
 * earlier reading could be stale without a sign, and a stale log picks the wrong disc. Rows are cheap
 * beside that; a request is not, so there is one for all tables.
 */
import { ExcelHost } from "../../../test/excel/support/excelHost";
import { ExcelWorkbook } from "../../workbook/excel";
import { readRawBook } from "../../pane/book/book";
import type { BenchRow } from "../bench";

const ROWS = 20_000;

export async function rows(): Promise<BenchRow[]> {
  const host = new ExcelHost();
  const { Excel, Office } = host.library;
  Object.assign(globalThis, { Excel, Office });
  const port = new ExcelWorkbook();
  const sheet = host.book.sheet("Mine");
  ["Date", "Disc", "Carry"].forEach((header, at) =>
    sheet.put(1, at + 1, { value: header, kind: "String" }),
  );
  for (let row = 2; row <= ROWS + 1; row++) {
    sheet.put(row, 1, { value: 45_000 + Math.floor(row / 40), kind: "Double" });
    sheet.put(row, 2, { value: `Disc ${(row % 20) + 1}`, kind: "String" });
    sheet.put(row, 3, { value: 200 + ((row * 37) % 120), kind: "Double" });
  }
  host.book.addTable(sheet, { top: 1, left: 1, bottom: ROWS + 1, right: 3 }).name = "Throws";

  let letters = 0;
  const answer = host.answer.bind(host);
  host.answer = async (body, flags) => {
    const response = await answer(body, flags);
    letters += JSON.stringify(response).length;
    return response;
  };
  await readRawBook(port);
  letters = 0;
  await port.readTable("Throws");
  const whole = letters;
  host.type("Mine", 5_000, 3, 301);
  letters = 0;
  host.syncs = 0;
  await readRawBook(port);
  return [
    {
      name: "requests after a change of one throw of 20,000",
      target: "1",
      result: String(host.syncs),
      ok: host.syncs === 1,
    },
    {
      name: "letters read then against the whole log",
      target: "none (read whole, see the file)",
      result: `${(letters / whole).toFixed(2)} x (${(letters / 1e6).toFixed(2)} MB)`,
      ok: null,
    },
  ];
}
