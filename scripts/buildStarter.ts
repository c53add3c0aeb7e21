/** Builds dist/carrybook-starter.xlsx: the starter workbook with the values of all its formulas. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { bundleInNode } from "../src/preview/bundleInNode";
import { openHeadless } from "../src/preview/headless";
import { starterBlueprint } from "../src/workbook/blueprint";
import { writeBook } from "../src/workbook/file/bookBytes";
import { calculate } from "../src/workbook/file/calculate";
import { FilePort } from "../src/workbook/file/filePort";

const FOLDER = "dist";

async function main(): Promise<void> {
  const bundle = bundleInNode(FOLDER);
  const { book } = FilePort.create(starterBlueprint());
  await calculate(book, (blueprint) => openHeadless(blueprint, bundle));
  mkdirSync(FOLDER, { recursive: true });
  const path = join(FOLDER, "carrybook-starter.xlsx");
  writeFileSync(path, await writeBook(book));
  console.log(`${path} is written.`);
}

void main();
