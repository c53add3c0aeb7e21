import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

const FOLDER = join(__dirname, "../functions");

/** The first example of every function's comment, as "=CARRY.LEVEL(301,4)"; each works in the starter workbook. */
export function functionExamples(): string[] {
  const all = readdirSync(FOLDER)
    .filter((file) => file.endsWith(".ts"))
    .flatMap((file) => [
      ...readFileSync(join(FOLDER, file), "utf8").matchAll(/@example (=CARRY\.(\w+)\(.*\))$/gm),
    ]);
  return [...new Map(all.reverse().map(([, formula = "", name]) => [name, formula])).values()];
}
