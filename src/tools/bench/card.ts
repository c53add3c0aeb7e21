/** The card from a log: how fast, how it grows, and against a plain statement of the same formulas. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildSync } from "esbuild";
import { Bench } from "tinybench";
import type { BenchRow } from "../bench";
import type * as Bundled from "./cardEntry";

const FULL_SHEET = 1_048_575;
const DISCS = 20;

/** Invented throws: 20 discs over 600 days, every third with a sideways miss; the same each time. */
function logOf(throws: number): unknown[][] {
  const header = [
    "Date",
    "Disc",
    "Carry",
    "Offline",
    "Power",
    "Line",
    "Headwind",
    "Rise",
    "Player",
  ];
  const rows = Array.from({ length: throws }, (_, index): unknown[] => {
    const disc = (index * 7) % DISCS;
    const swing = Math.sin(index * 12.9898) + Math.sin(index * 78.233);
    const carry = Math.round((180 + 12 * disc) * Math.exp(0.05 * swing));
    const offline = index % 3 === 0 ? Math.round(10 * swing) : "";
    const day = 46_000 + Math.floor((600 * index) / throws);
    return [day, `Disc ${disc}`, carry, offline, "", "", "", "", "Me"];
  });
  return [header, ...rows];
}

/** Milliseconds of the best run of each piece of work. */
async function bestMs(works: Record<string, () => unknown>, time: number): Promise<number[]> {
  const bench = new Bench({ time, iterations: 3, warmupTime: time / 2, throws: true });
  for (const [name, work] of Object.entries(works)) bench.add(name, work);
  const tasks = await bench.run();
  return tasks.map(({ result }) => ("latency" in result ? result.latency.min : NaN));
}

function bundle(folder: string): typeof Bundled {
  const outfile = join(folder, "card.cjs");
  const entryPoints = [join(__dirname, "cardEntry.ts")];
  buildSync({ entryPoints, bundle: true, platform: "node", format: "cjs", outfile });
  // eslint-disable-next-line @typescript-eslint/no-require-imports
  return require(outfile) as typeof Bundled;
}

export async function rows(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-bench-"));
  try {
    return await measure(bundle(folder));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function measure({
  readCard,
  plainCard,
  DEFAULT_SETTINGS,
}: typeof Bundled): Promise<BenchRow[]> {
  const logs = [1000, 10_000, 100_000, FULL_SHEET].map(logOf);
  const [small, tenThousand, large, full] = logs as [
    unknown[][],
    unknown[][],
    unknown[][],
    unknown[][],
  ];
  const ours = (cells: unknown[][]) => () => readCard(cells, null, DEFAULT_SETTINGS);
  const [smallMs, ownMs, plainMs] = (await bestMs(
    { small: ours(small), own: ours(tenThousand), plain: () => plainCard(tenThousand) },
    1500,
  )) as [number, number, number];
  const [largeMs, fullMs] = (await bestMs({ large: ours(large), full: ours(full) }, 1000)) as [
    number,
    number,
  ];
  const perThrow = (ms: number, throws: number): string =>
    `${((ms * 1e6) / throws).toFixed(0)} ns a throw`;
  const growth = fullMs / FULL_SHEET / (largeMs / 100_000);
  return [
    {
      name: "card from 10,000 throws",
      target: "≤ 5 ms",
      result: `${ownMs.toFixed(1)} ms`,
      ok: ownMs <= 5,
    },
    {
      name: "against a plain statement (jstat, simple-statistics)",
      target: "faster",
      result: `${(plainMs / ownMs).toFixed(1)} × faster`,
      ok: plainMs > ownMs,
    },
    { name: "card from 1,000 throws", target: "", result: perThrow(smallMs, 1000), ok: null },
    { name: "card from 100,000 throws", target: "", result: perThrow(largeMs, 100_000), ok: null },
    {
      name: "card from a full sheet, 1,048,575 throws",
      target: "≤ 1 s",
      result: `${(fullMs / 1000).toFixed(2)} s, ${perThrow(fullMs, FULL_SHEET)}`,
      ok: fullMs <= 1000,
    },
    {
      name: "growth from 100,000 throws to a full sheet",
      target: "linear: ≤ 1.5 × a throw",
      result: `${growth.toFixed(2)} × a throw`,
      ok: growth <= 1.5,
    },
  ];
}
