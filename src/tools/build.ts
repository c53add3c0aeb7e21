/**
 * npm run build: the add-in by webpack, then all that stands beside it in dist/. A list here and not
 * npm's postbuild, since scripts that npm runs by itself are switched off (.npmrc).
 *
 * npm run build -- --env host=https://example.org/carrybook  builds for a host; what follows `--` goes
 * to webpack.
 */
import { spawnSync } from "node:child_process";
import { resolve } from "node:path";

const ROOT = resolve(__dirname, "../..");
const AFTER_THE_ADD_IN = [
  "buildPage",
  "buildStarter",
  "buildPhone",
  "notices",
  "buildPages",
  "hosting",
];

/** Runs one of the packages' commands, and ends with its exit code where it fails. */
function run(command: string, args: readonly string[]): void {
  const script = require.resolve(command);
  const { status } = spawnSync(process.execPath, [script, ...args], {
    cwd: ROOT,
    stdio: "inherit",
  });
  if (status !== 0) process.exit(status ?? 1);
}

run("webpack-cli/bin/cli.js", ["--mode", "production", ...process.argv.slice(2)]);
for (const tool of AFTER_THE_ADD_IN) run("tsx/cli", [resolve(__dirname, `${tool}.ts`)]);
