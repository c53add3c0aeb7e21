/**
 * The slow judges at their full length: holes played out a million times, and functions asked 200,000
 * times whatever comes. The latter are taken from `dist/`.
 * `npm run test:long -- fuzz` runs one of them.
 */
import { spawnSync } from "node:child_process";
import { resolve } from "node:path";

const JUDGES = ["playedOut", "functions/fuzz"];
const LENGTHS = { CARRYBOOK_LONG: "1", CARRYBOOK_FUZZ: "200000" };

const asked = process.argv.slice(2);
const { status } = spawnSync(
  process.execPath,
  [require.resolve("jest/bin/jest"), ...(asked.length > 0 ? asked : JUDGES)],
  {
    cwd: resolve(__dirname, "../.."),
    env: { ...LENGTHS, ...process.env },
    stdio: "inherit",
  },
);
process.exitCode = status ?? 1;
