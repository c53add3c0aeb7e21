/**
 * Prints every measured figure beside its target: `npm run bench`, or `npm run bench -- flight`
 * for one group. Machines are shared and noisy, so the figures worth keeping are the ratios
 * against a peer measured in the same run.
 */
import { readdirSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

export interface BenchRow {
  readonly name: string;
  readonly target: string;
  readonly result: string;
  /** null where there is no target, or nothing to compare with on this machine. */
  readonly ok: boolean | null;
}

const FOLDER = join(__dirname, "bench");
const HEADER: BenchRow = { name: "what", target: "target", result: "result", ok: null };

const groups = (wanted: readonly string[]): string[] =>
  readdirSync(FOLDER)
    .filter((file) => file.endsWith(".ts"))
    .map((file) => file.slice(0, -".ts".length))
    .filter((group) => wanted.length === 0 || wanted.includes(group))
    .sort();

function line({ name, target, result, ok }: BenchRow): string {
  const verdict = ok === null ? "" : ok ? "met" : "MISSED";
  return `${name.padEnd(58)} ${target.padEnd(22)} ${result.padEnd(34)} ${verdict}`;
}

async function main(): Promise<void> {
  console.log(line(HEADER));
  for (const group of groups(process.argv.slice(2))) {
    const file = pathToFileURL(join(FOLDER, `${group}.ts`)).href;
    const { rows } = (await import(file)) as { rows?: () => Promise<BenchRow[]> };
    if (!rows) continue;
    console.log(`\n${group}`);
    for (const row of await rows()) console.log(line(row));
  }
}

void main();
