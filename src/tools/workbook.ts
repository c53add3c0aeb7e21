/**
 * Works out a workbook without a spreadsheet: `npm run workbook -- in.xlsx out.xlsx`. Every formula
 * gets its value, ours included; the rest of the file stays as it is. A .csv of throws becomes a
 * workbook of ours, as it does on the page.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { bundleInNode } from "../page/bundleInNode";
import { openHeadless } from "../page/headless";
import { blueprintOf } from "../workbook/blueprint";
import { readBook, writeBook } from "../workbook/file/bookBytes";
import { calculate } from "../workbook/file/calculate";
import { FilePort } from "../workbook/file/filePort";
import { isPacked, openFile } from "../workbook/file/openFile";

type Book = FilePort["book"];

async function bookIn(path: string): Promise<Book> {
  const bytes = readFileSync(path);
  if (isPacked(bytes)) return readBook(bytes);
  const { content, counted } = await openFile(bytes, path);
  console.log(`${basename(path)}: ${counted}`);
  return FilePort.create(blueprintOf(content)).book;
}

async function main([from, to]: readonly string[]): Promise<void> {
  if (from === undefined || to === undefined) {
    console.error("Give two files: npm run workbook -- in.xlsx out.xlsx");
    process.exitCode = 2;
    return;
  }
  const book = await bookIn(from);
  const bundle = bundleInNode("dist");
  await calculate(book, (blueprint) => openHeadless(blueprint, bundle));
  writeFileSync(to, await writeBook(book));
  console.log(`${to} is written.`);
}

main(process.argv.slice(2)).catch((error: unknown) => {
  const reason = error instanceof Error ? error.message : String(error);
  console.error(reason);
  process.exitCode = 1;
});
