/**
 * Works out a workbook without a spreadsheet: `npm run workbook -- in.xlsx out.xlsx`. Of the file only
 * the stored values of formulas change, and of those only the ones whose answer is another; every
 * other part comes out byte for byte as it went in. A .csv of throws becomes a workbook of ours, as it
 * does on the page.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { basename } from "node:path";
import { bundleInNode } from "../page/bundleInNode";
import { openHeadless } from "../page/headless";
import { blueprintOf } from "../workbook/blueprint";
import type { FunctionsBundle } from "../workbook/embedded/engine";
import { isPacked, openFile } from "../workbook/file/openFile";
import { recalculate } from "../workbook/file/recalculate";
import { fileOf } from "../workbook/file/writeBook";
import { WorkbookPackage } from "../workbook/package/workbookPackage";

async function bytesOf(path: string, bundle: FunctionsBundle): Promise<Uint8Array> {
  const bytes = readFileSync(path);
  if (isPacked(bytes)) return bytes;
  const { content, counted } = await openFile(bytes, path);
  console.log(`${basename(path)}: ${counted}`);
  const { port, close } = await openHeadless(blueprintOf(content), bundle);
  const made = fileOf(port.whole());
  close();
  return made;
}

/** Formulas are named one by one up to so many. */
const MOST_NAMED = 10;

function sayLeft(left: readonly string[]): void {
  if (left.length === 0) return;
  const more = left.length > MOST_NAMED ? ` and ${left.length - MOST_NAMED} more` : "";
  console.log(
    `Left as they were, because only a spreadsheet can work them out: ${left.slice(0, MOST_NAMED).join(", ")}${more}.`,
  );
}

async function main([from, to]: readonly string[]): Promise<void> {
  if (from === undefined || to === undefined) {
    console.error("Give two files: npm run workbook -- in.xlsx out.xlsx");
    process.exitCode = 2;
    return;
  }
  const bundle = bundleInNode("dist");
  const bytes = await bytesOf(from, bundle);
  const done = await recalculate(WorkbookPackage.read(bytes), bytes, (blueprint) =>
    openHeadless(blueprint, bundle),
  );
  writeFileSync(to, done.bytes);
  sayLeft(done.left);
  console.log(
    `${to} is written. ${done.changed === 0 ? "No stored value has changed" : `Stored values changed: ${done.changed}`}.`,
  );
}

main(process.argv.slice(2)).catch((error: unknown) => {
  const reason = error instanceof Error ? error.message : String(error);
  console.error(reason);
  process.exitCode = 1;
});
