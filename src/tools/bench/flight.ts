/**
 * Flights against the same algorithm in C and against a general-purpose solver, and plays-like
 * distances cold and remembered. Measured in a bundle, as users run it; a module loader that
 * looks every import up anew would cost more than the physics.
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { buildSync } from "esbuild";
import { Bench } from "tinybench";
import { FULL_EFFECT } from "../../core/flight/air";
import { toRadians } from "../../core/units";
import type { BenchRow } from "../bench";
import type * as Bundled from "./flightEntry";

/** Small batches: the best of many fits between what else the machine does. */
const FLIGHTS = 50;
const BATCHES = 2000;

const speedOf = (index: number): number => 15 + (index % 16);
const elevationOf = (index: number): number => toRadians(2 + (Math.floor(index / 16) % 13));

function bundle(folder: string): typeof Bundled {
  const outfile = join(folder, "flight.cjs");
  const entry = join(__dirname, "flightEntry.ts");
  buildSync({ entryPoints: [entry], bundle: true, platform: "node", format: "cjs", outfile });
  // eslint-disable-next-line @typescript-eslint/no-require-imports
  return require(outfile) as typeof Bundled;
}

/** Metres and seconds of one batch in C; null where there is no compiler. */
function inC(folder: string): { metres: number; seconds: number } | null {
  const program = join(folder, "flight");
  try {
    execFileSync("cc", ["-O2", join(__dirname, "flight.c"), "-o", program, "-lm"]);
  } catch {
    return null;
  }
  const printed = execFileSync(program, [String(FLIGHTS), String(BATCHES)], { encoding: "utf8" });
  return JSON.parse(printed) as { metres: number; seconds: number };
}

/** Seconds of the best run of each piece of work. */
async function bestSeconds(works: Record<string, () => void>, time: number): Promise<number[]> {
  const bench = new Bench({ time, warmupTime: time / 2, throws: true });
  for (const [name, work] of Object.entries(works)) bench.add(name, work);
  const tasks = await bench.run();
  return tasks.map(({ result }) => ("latency" in result ? result.latency.min / 1000 : NaN));
}

export async function rows(): Promise<BenchRow[]> {
  const folder = mkdtempSync(join(tmpdir(), "carrybook-bench-"));
  try {
    return await measure(bundle(folder), inC(folder));
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function measure(
  { carryM, odexPosition, playsLikeM, DISC_POLARS }: typeof Bundled,
  c: { metres: number; seconds: number } | null,
): Promise<BenchRow[]> {
  const calm = { polar: DISC_POLARS.fairway, densityKgM3: 1.225, headwindMps: 0, riseM: 0 };
  let metres = 0;
  const batch = () => {
    metres = 0;
    for (let index = 0; index < FLIGHTS; index++) {
      metres += carryM(speedOf(index), elevationOf(index), calm);
    }
  };
  const general = () => {
    const air = { headwindMps: 0, crosswindMps: 0, densityKgM3: 1.225 };
    odexPosition({ type: "fairway", speedMps: 22, elevationRad: toRadians(5), ...air }, 4);
  };
  const still = { densityKgM3: 1.225, ...FULL_EFFECT };
  const shot = { distanceM: 91.44, riseM: 4.5, headwindMps: 3 };
  let count = 0;
  const fourCold = () => {
    for (let time = 0; time < 4; time++) {
      const distanceM = 60 + ((count++ * 0.618034) % 1) * 60;
      playsLikeM({ ...shot, distanceM }, still, null);
    }
  };
  const hundredWarm = () => {
    for (let time = 0; time < 100; time++) playsLikeM(shot, still, null);
  };

  const [batchS, generalS, fourColdS, hundredWarmS] = (await bestSeconds(
    { batch, general, fourCold, hundredWarm },
    1000,
  )) as [number, number, number, number];
  const perSecond = FLIGHTS / batchS;
  const ratio = c ? batchS / c.seconds : NaN;
  const agree = c !== null && Math.abs(c.metres / metres - 1) < 1e-9;
  return [
    {
      name: "flights a second",
      target: "> 50,000",
      result: Math.round(perSecond).toLocaleString("en"),
      ok: perSecond > 50_000,
    },
    {
      name: "flight against the same algorithm in C -O2",
      target: "≤ 1.2 ×, same metres",
      result: c ? `${ratio.toFixed(2)} ×${agree ? "" : ", other metres"}` : "no C compiler here",
      ok: c ? agree && ratio <= 1.2 : null,
    },
    {
      name: "flight against a general solver (odex, 1e-10)",
      target: "",
      result: `${((generalS * FLIGHTS) / batchS).toFixed(0)} × faster`,
      ok: null,
    },
    {
      name: "plays-like distance, cold",
      target: "≤ 1.5 ms",
      result: `${(fourColdS * 250).toFixed(2)} ms`,
      ok: fourColdS <= 6e-3,
    },
    {
      name: "plays-like distance, warm",
      target: "≤ 5 µs",
      result: `${(hundredWarmS * 1e4).toFixed(2)} µs`,
      ok: hundredWarmS <= 5e-4,
    },
  ];
}
