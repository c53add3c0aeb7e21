/** Bundles the phone page into dist/phone with esbuild, with the starter workbook that stands beside it. */
import { createHash } from "node:crypto";
import { copyFileSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { build, type Metafile } from "esbuild";
import type { LightBook } from "../workbook/light/lightBook";
import { calculatedIn, readLightFile } from "../workbook/light/lightFile";
import { readContent } from "../workbook/package/readContent";
import { WorkbookPackage } from "../workbook/package/workbookPackage";

const ROOT = resolve(__dirname, "../..");
const FROM = join(ROOT, "src/phone");
const TO = join(ROOT, "dist/phone");
const COPIED = ["rescue.html", "phone.css", "manifest.webmanifest"];
const ICONS = ["icon.svg", "icon-192.png", "icon-512.png"];

const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8")) as {
  version: string;
};

const bundle = (entries: readonly string[], define: Readonly<Record<string, string>>) =>
  build({
    entryPoints: entries.map((name) => join(FROM, name)),
    outdir: TO,
    bundle: true,
    minify: true,
    metafile: true,
    format: "esm",
    splitting: true,
    chunkNames: "parts/[name]-[hash]",
    target: "es2022",
    alias: {
      "@stdlib/assert-has-generator-support": join(ROOT, "src/tools/generatorSupport.cjs"),
      debug: join(ROOT, "src/tools/noDebug.cjs"),
    },
    define: {
      "process.env.NODE_ENV": '"production"',
      ...Object.fromEntries(
        Object.entries(define).map(([name, text]) => [`process.env.${name}`, JSON.stringify(text)]),
      ),
    },
    legalComments: "none",
    logLevel: "warning",
  });

/** What the page loads before anything is asked of it: its script, the pane, and all that these import at once. */
function firstLoad({ outputs }: Metafile): string[] {
  const paths = Object.keys(outputs);
  const found = new Set<string>();
  const visit = (path: string): void => {
    if (found.has(path)) return;
    found.add(path);
    for (const { path: imported, kind } of outputs[path]!.imports)
      if (kind === "import-statement") visit(imported);
  };
  visit(paths.find((path) => path.endsWith("phone/phone.js"))!);
  visit(paths.find((path) => outputs[path]!.entryPoint?.endsWith("pane/mount.ts"))!);
  return [...found].map((path) => path.slice(path.indexOf("phone/") + "phone/".length));
}

/** The starter workbook as a light one, without what its formulas say: that is of use only in the file. */
function typedIn(bytes: Uint8Array): LightBook {
  const { sheets, names } = readLightFile(bytes);
  const contents = readContent(WorkbookPackage.read(bytes)).sheets;
  const typed = sheets.map((sheet) => {
    const isCalculated = calculatedIn(
      contents.find(({ part }) => part.name === sheet.name)!.formulas,
    );
    const rows = sheet.rows.map((row, down) =>
      row.map((value, along) => (isCalculated({ row: down + 1, column: along + 1 }) ? "" : value)),
    );
    return { ...sheet, rows, formulas: [] };
  });
  return { sheets: typed, names };
}

const filesIn = (folder: string): string[] =>
  readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(TO.length + 1)
        .replaceAll("\\", "/"),
    )
    .sort();

async function main(): Promise<void> {
  rmSync(TO, { recursive: true, force: true });
  mkdirSync(TO, { recursive: true });
  const { metafile } = await bundle(["phone.ts", "rescue.ts"], { PAGE_VERSION: version });
  for (const name of COPIED) copyFileSync(join(FROM, name), join(TO, name));
  for (const name of ICONS) copyFileSync(join(ROOT, "assets", name), join(TO, name));
  const starter = join(ROOT, "dist/carrybook-starter.xlsx");
  copyFileSync(starter, join(TO, "starter.xlsx"));
  writeFileSync(join(TO, "starter.json"), JSON.stringify(typedIn(readFileSync(starter))));
  const scripts = firstLoad(metafile).map((path) =>
    path === "phone.js"
      ? `<script type="module" src="${path}"></script>`
      : `<link rel="modulepreload" href="${path}" />`,
  );
  const html = readFileSync(join(FROM, "index.html"), "utf8");
  writeFileSync(join(TO, "index.html"), html.replace("<!-- scripts -->", scripts.join("\n    ")));

  const files = filesIn(TO);
  const hash = createHash("sha256");
  for (const path of files) hash.update(path).update(readFileSync(join(TO, path)));
  await bundle(["serviceWorker.ts"], {
    PAGE_FILES: JSON.stringify(files),
    PAGE_VERSION: hash.digest("hex").slice(0, 16),
  });
}

if (require.main === module) void main();
