import { zip } from "@cj-tech-master/excelts/archive";
import { Workbook } from "@cj-tech-master/excelts";
import { blueprintOf, starterBlueprint } from "../../src/workbook/blueprint";
import { STARTER } from "../../src/workbook/blueprint/content";
import { readBook, unpack, writeBook } from "../../src/workbook/file/bookBytes";
import { FilePort } from "../../src/workbook/file/filePort";
import { openFile } from "../../src/workbook/file/openFile";

const bytes = (text: string): Uint8Array => new TextEncoder().encode(text);
const starter = (): Promise<Uint8Array> => writeBook(FilePort.create(starterBlueprint()).book);
const invalid = (words: string): object =>
  expect.objectContaining({
    name: "PortError",
    fault: "invalid",
    message: expect.stringContaining(words),
  });

describe("our own workbook", () => {
  test("is the same after saving, reading and saving", async () => {
    const saved = await starter();
    const again = await writeBook(await readBook(saved));
    expect(Buffer.compare(saved, again)).toBe(0);
  });

  test("comes back with all that was typed", async () => {
    const { content, leftBehind } = await openFile(await starter());
    expect(leftBehind).toEqual([]);
    const { throws, bag, course, results, putts, putting } = STARTER;
    expect(content).toMatchObject({ throws, bag, course, results, putts, putting });
    expect(content.settings.get("player")).toBe("Me");
    expect(content.settings.get("distances in")).toBe("ft");
    const { notes, disc, otherDisc } = STARTER;
    expect(blueprintOf({ ...content, notes, disc, otherDisc })).toEqual(starterBlueprint());
  });

  test("names the sheets that stay behind", async () => {
    const { book } = FilePort.create(starterBlueprint());
    book.addWorksheet("Mine").getCell("A1").value = "keep";
    expect((await openFile(await writeBook(book))).leftBehind).toEqual(["Mine"]);
  });
});

describe("another workbook", () => {
  const other = async (fill: (book: Workbook) => void): Promise<Uint8Array> => {
    const book = new Workbook();
    fill(book);
    return writeBook(book);
  };

  test("gives its throws where a sheet has Disc and Carry", async () => {
    const file = await other((book) => {
      book.addWorksheet("Plans").getCell("B2").value = "nothing here";
      book
        .addWorksheet("Field")
        .addRows([
          ["Spring"],
          [],
          ["carry (m)", "Day", " DISC "],
          [100, new Date(Date.UTC(2026, 4, 12)), "Copper mid"],
          [],
          [{ formula: "50+50", result: 100 }, "", "=1+1"],
        ]);
    });
    const { content, leftBehind } = await openFile(file);
    expect(leftBehind).toEqual(["Plans"]);
    const [first, second] = content.throws;
    /** 12 May 2026 is day 46154, as LibreOffice numbers it; 100 m are 328.084 ft (NIST SP 811). */
    expect(first!.slice(0, 2)).toEqual([46154, "Copper mid"]);
    expect(first![2]).toBeCloseTo(328.084, 3);
    expect(second!.slice(1, 2)).toEqual(["=1+1"]);
  });

  test("keeps text that looks like a formula as text", async () => {
    const { content } = await openFile(
      await other((book) => {
        book.addWorksheet("Log").addRows([
          ["Disc", "Carry", "Note"],
          ['=HYPERLINK("http://example.org")', 300, "+1"],
        ]);
      }),
    );
    const port = FilePort.create(blueprintOf(content));
    const cell = port.book.getWorksheet("Log")!.getCell("B6");
    expect(cell.formula).toBeUndefined();
    expect(cell.value).toBe('=HYPERLINK("http://example.org")');
  });

  test("is refused where no sheet has throws", async () => {
    const file = await other((book) => void book.addWorksheet("A").addRow(["Name", "Score"]));
    await expect(openFile(file)).rejects.toEqual(invalid("Disc and a Carry"));
  });
});

describe("separated values", () => {
  test.each([
    ["commas", "Disc,Carry,Date\nCopper mid,301,2026-05-12\n"],
    ["semicolons and decimal commas", "Disc;Carry;Date\r\nCopper mid;301,0;2026-05-12\r\n"],
    ["tabs, a mark and a blank line", "\uFEFFDisc\tCarry\tDate\n\nCopper mid\t301\t2026-05-12"],
  ])("are read with %s", async (_, text) => {
    const { content } = await openFile(bytes(text));
    expect(content.throws).toEqual([[46154, "Copper mid", 301, "", "", "", "", "", "", ""]]);
  });

  test("may be a bare list of disc and carry", async () => {
    const { content } = await openFile(bytes("Mint fairway,352\nCopper mid,290"));
    expect(content.throws.map((row) => row.slice(1, 3))).toEqual([
      ["Mint fairway", 352],
      ["Copper mid", 290],
    ]);
  });

  test("leave text and odd numbers as they are", async () => {
    const { content } = await openFile(bytes('Disc,Carry\n"=cmd|x",abc\nA,1e3\nB,0x10'));
    expect(content.throws.map((row) => row.slice(1, 3))).toEqual([
      ["=cmd|x", "abc"],
      ["A", "1e3"],
      ["B", "0x10"],
    ]);
  });

  test("are refused where they are something else", async () => {
    await expect(openFile(bytes("hello"))).rejects.toEqual(invalid("Disc and a Carry"));
    await expect(openFile(new Uint8Array([1, 0, 2]))).rejects.toEqual(invalid("not an .xlsx"));
    await expect(openFile(new Uint8Array())).rejects.toEqual(invalid("Disc and a Carry"));
  });

  test("are no workbook, whatever the name says", async () => {
    await expect(openFile(bytes("hello"), "junk.xlsx")).rejects.toEqual(invalid("not an .xlsx"));
    await expect(openFile(bytes("\u0001\u0002"))).rejects.toEqual(invalid("not an .xlsx"));
    await expect(openFile(bytes("hello"), "junk.csv")).rejects.toEqual(invalid("Disc and a Carry"));
  });
});

describe("a file that must not be read", () => {
  const packed = async (parts: Record<string, Uint8Array | string>): Promise<Uint8Array> => {
    const archive = zip();
    for (const [path, content] of Object.entries(parts)) archive.add(path, content);
    return archive.bytes();
  };
  const book = { "xl/workbook.xml": "<workbook/>" };

  test.each([
    ["an encrypted one", async () => new Uint8Array([0xd0, 0xcf, 0x11, 0xe0, 0xa1]), "password"],
    ["a cut one", async () => (await starter()).slice(0, 20_000), "damaged"],
    ["one with bytes changed", async () => (await starter()).fill(7, 5_000, 9_000), "damaged"],
    ["a zip of something else", () => packed({ "a.txt": "hello" }), "not an .xlsx"],
    ["no sheets at all", () => packed(book), "Disc and a Carry"],
    [
      "one that swells",
      () => packed({ ...book, "xl/media/a": new Uint8Array(260_000_000) }),
      "unpacks",
    ],
    [
      "very many parts",
      () => packed(Object.fromEntries(Array.from({ length: 2_001 }, (_, i) => [`p${i}`, "x"]))),
      "unpacks",
    ],
    ["one too large", async () => new Uint8Array(25_000_001).fill(0x50), "larger than 25 MB"],
  ])("%s", async (_, make, words) => {
    await expect(openFile(await make())).rejects.toEqual(invalid(words));
  });

  test("is stopped while it unpacks, whatever size it claims", async () => {
    const honest = await packed({ ...book, "xl/media/a": new Uint8Array(3_000_000) });
    const lying = honest.slice();
    const view = new DataView(lying.buffer);
    /** Claims 10 bytes in the central directory (APPNOTE.TXT 4.3.12: uncompressed size at offset 24). */
    for (let at = 0; at < lying.length - 4; at++)
      if (view.getUint32(at, true) === 0x02014b50 && view.getUint32(at + 24, true) === 3_000_000)
        view.setUint32(at + 24, 10, true);
    expect(Buffer.compare(honest, lying)).not.toBe(0);
    await expect(unpack(lying)).rejects.toEqual(invalid("damaged"));
  });
});
