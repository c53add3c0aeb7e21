/**
 * Builds the starter workbook with the values of all its formulas: dist/carrybook-starter.xlsx for
 * Excel with the add-in, and dist/carrybook-starter-plain.xlsx for any other program.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { bundleInNode } from "../src/preview/bundleInNode";
import { openHeadless } from "../src/preview/headless";
import { starterBlueprint } from "../src/workbook/blueprint";
import { writeBook } from "../src/workbook/file/bookBytes";
import { calculate } from "../src/workbook/file/calculate";
import { FilePort } from "../src/workbook/file/filePort";
import { withoutUs } from "../src/workbook/file/withoutUs";

const FOLDER = "dist";

async function main(): Promise<void> {
  const bundle = bundleInNode(FOLDER);
  const { book } = FilePort.create(starterBlueprint());
  await calculate(book, (blueprint) => openHeadless(blueprint, bundle));
  mkdirSync(FOLDER, { recursive: true });
  writeFileSync(join(FOLDER, "carrybook-starter.xlsx"), await writeBook(book));
  withoutUs(book);
  writeFileSync(join(FOLDER, "carrybook-starter-plain.xlsx"), await writeBook(book));
  console.log(`The starter workbooks are in ${FOLDER}.`);
}

void main();
