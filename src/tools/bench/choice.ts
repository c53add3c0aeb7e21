/** Runs what choiceEntry.ts measures from a bundle, as users run the product; see flight.ts. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildSync } from "esbuild";
import type { BenchRow } from "../bench";
import type * as Bundled from "./choiceEntry";

export async function rows(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-bench-"));
  try {
    const outfile = join(folder, "choice.cjs");
    const entryPoints = [join(__dirname, "choiceEntry.ts")];
    buildSync({ entryPoints, bundle: true, platform: "node", format: "cjs", outfile });
    // eslint-disable-next-line @typescript-eslint/no-require-imports
    return await (require(outfile) as typeof Bundled).choiceRows();
  } finally {
    rmSync(folder, { recursive: true });
  }
}
