/**
 * Builds the starter workbook with the values of all its formulas: dist/carrybook-starter.xlsx for
 * Excel with the add-in, and dist/carrybook-starter-plain.xlsx for any other program.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { bundleInNode } from "../page/bundleInNode";
import { openHeadless } from "../page/headless";
import { starterBlueprint } from "../workbook/blueprint";
import { writeBook } from "../workbook/file/bookBytes";
import { calculate, withoutUs } from "../workbook/file/calculate";
import { FilePort } from "../workbook/file/filePort";

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
