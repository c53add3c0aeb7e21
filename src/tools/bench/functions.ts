/**
 * The functions as they are built: their size, and how long a fresh process takes to start them,
 * beside a general-purpose statistics package. Run after `npm run build`.
 */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { gzipSync } from "node:zlib";
import type { BenchRow } from "../bench";

const BUNDLE = resolve(__dirname, "../../../dist/functions.js");
const STARTS = 15;
const MOST_KB = 90;
const MOST_START_MS = 60;

/** Prints the milliseconds from the first byte read to the last function registered. */
const START = `
  globalThis.CustomFunctions = { associate() {} };
  const start = performance.now();
  require(process.argv[1]);
  console.log(performance.now() - start);
`;

/** Best of several starts, each in a process of its own, ms. */
const startMs = (file: string): number =>
  Math.min(
    ...Array.from({ length: STARTS }, () =>
      Number(execFileSync(process.execPath, ["-e", START, file], { encoding: "utf8" })),
    ),
  );

export async function rows(): Promise<BenchRow[]> {
  const kilobytes = gzipSync(readFileSync(BUNDLE)).length / 1000;
  const [ownMs, peerMs] = [startMs(BUNDLE), startMs(require.resolve("jstat"))];
  return [
    {
      name: "functions bundle, gzip",
      target: `≤ ${MOST_KB} kB`,
      result: `${kilobytes.toFixed(1)} kB`,
      ok: kilobytes <= MOST_KB,
    },
    {
      name: "start of the functions in a fresh process",
      target: `≤ ${MOST_START_MS} ms`,
      result: `${ownMs.toFixed(1)} ms, jstat ${peerMs.toFixed(1)} ms`,
      ok: ownMs <= MOST_START_MS,
    },
  ];
}
