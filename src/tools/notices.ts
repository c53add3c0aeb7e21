/**
 * Writes dist/third-party-notices.txt: every package that may end in what we ship, with its
 * licence in full. Fails on a licence that nobody has looked at.
 */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

const ROOT = resolve(__dirname, "../..");
const OUT = join(ROOT, "dist/third-party-notices.txt");
const LOOKED_AT = [
  "0BSD",
  "Apache-2.0",
  "BSD-2-Clause",
  "BSD-3-Clause",
  "BSL-1.0",
  "BlueOak-1.0.0",
  "ISC",
  "MIT",
  "Unlicense",
];

/** Packages whose package.json states no licence; read in their licence file. */
const STATED_IN_FILE: Readonly<Record<string, string>> = { "@univerjs/telemetry": "Apache-2.0" };

interface Locked {
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly version: string;
}

interface Notice {
  readonly name: string;
  readonly licence: string;
  readonly text: string;
}

function noticeOf(path: string): Notice {
  const folder = join(ROOT, path);
  const { name, version, license } = JSON.parse(readFileSync(join(folder, "package.json"), "utf8"));
  const file = readdirSync(folder).find((entry) => /^(licen[cs]e|copying|notice)/i.test(entry));
  const text = file
    ? readFileSync(join(folder, file), "utf8").trim()
    : "(no licence file in the package)";
  return {
    name: `${name} ${version}`,
    licence: String(license ?? STATED_IN_FILE[name] ?? "none stated"),
    text,
  };
}

/** An SPDX expression is fine where all parts of one of its alternatives are. */
const isLookedAt = (licence: string): boolean =>
  licence
    .replace(/[()]/g, "")
    .split(" OR ")
    .some((one) => one.split(" AND ").every((part) => LOOKED_AT.includes(part.trim())));

function main(): void {
  const lock = JSON.parse(readFileSync(join(ROOT, "package-lock.json"), "utf8"));
  const shipped = Object.entries(lock.packages as Record<string, Locked>)
    .filter(([path, locked]) => path !== "" && !locked.dev && !locked.optional)
    .map(([path]) => noticeOf(path));
  const unknown = shipped.filter(({ licence }) => !isLookedAt(licence));
  for (const { name, licence } of unknown) console.error(`${name}: licence ${licence}: look at it`);
  if (unknown.length > 0) process.exitCode = 1;
  mkdirSync(join(ROOT, "dist"), { recursive: true });
  writeFileSync(
    OUT,
    shipped
      .map(({ name, licence, text }) => `${name}\n${licence}\n\n${text}\n`)
      .join(`\n${"-".repeat(70)}\n\n`),
  );
  console.log(`third-party-notices.txt: ${shipped.length} packages`);
}

main();
