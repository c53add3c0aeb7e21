/**
 * Builds the starter workbook with the values of all its formulas: dist/carrybook-starter.xlsx for
 * Excel with the add-in, and dist/carrybook-starter-plain.xlsx for any other program.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { bundleInNode } from "../page/bundleInNode";
import { openHeadless } from "../page/headless";
import { starterBlueprint } from "../workbook/blueprint";
import { fileOf, withoutOurs } from "../workbook/file/writeBook";

const FOLDER = "dist";

async function main(): Promise<void> {
  const bundle = bundleInNode(FOLDER);
  const { port, close } = await openHeadless(starterBlueprint(), bundle);
  const book = port.whole();
  close();
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(join(FOLDER, "carrybook-starter.xlsx"), fileOf(book));
  writeFileSync(join(FOLDER, "carrybook-starter-plain.xlsx"), fileOf(withoutOurs(book)));
  console.log(`The starter workbooks are in ${FOLDER}.`);
}

void main();
