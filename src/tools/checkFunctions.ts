/**
 * Compares the functions' metadata with the reviewed copy, since names, order and meaning of
 * arguments are stored in people's workbooks. `-- --write` takes the present state as reviewed.
 */
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { functionsMetadata } from "./functionsMetadata";

const REVIEWED = join(__dirname, "../../test/reviewed/functions.json");

async function main(): Promise<void> {
  const present = await functionsMetadata();
  if (process.argv.includes("--write")) return writeFileSync(REVIEWED, present);
  if (readFileSync(REVIEWED, "utf8") === present) return console.log("functions.json: as reviewed");
  console.error("functions.json differs from test/reviewed/functions.json.");
  console.error("A shipped name or argument order is never changed; new arguments go at the end.");
  console.error("Where the change is right: npx tsx src/tools/checkFunctions.ts --write");
  process.exitCode = 1;
}

void main();
