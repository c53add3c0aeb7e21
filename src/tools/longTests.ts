/**
 * The slow judges at their full length: holes played out a million times, rounds learnt from by the
 * thousand, and functions, as `dist/` has them, asked 200,000 times whatever comes.
 * `npm run test:long -- fuzz` runs one of them.
 */
import { spawnSync } from "node:child_process";
import { resolve } from "node:path";

const JUDGES = ["playedOut", "simulation", "functions/fuzz"];
const LENGTHS = { CARRYBOOK_LONG: "1", CARRYBOOK_FUZZ: "200000" };

const asked = process.argv.slice(2);
const { status, signal } = spawnSync(
  process.execPath,
  [require.resolve("jest/bin/jest"), ...(asked.length > 0 ? asked : JUDGES)],
  {
    cwd: resolve(__dirname, "../.."),
    env: { ...LENGTHS, ...process.env },
    stdio: "inherit",
  },
);
if (signal) console.error(`Stopped by ${signal} before the end.`);
process.exitCode = status ?? 1;
