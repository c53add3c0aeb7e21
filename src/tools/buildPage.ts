/** Bundles the embedded workbook's page into dist/page with esbuild, beside the built functions. */
import { copyFileSync, mkdirSync } from "node:fs";
import { resolve } from "node:path";
import { build } from "esbuild";

const root = resolve(__dirname, "../..");
const from = resolve(root, "src/page");

/** Where functions.js and functions.json are, and where the page goes. */
export async function buildPage(
  functions = resolve(root, "dist"),
  to = resolve(root, "dist/page"),
): Promise<void> {
  mkdirSync(to, { recursive: true });
  await build({
    entryPoints: [resolve(from, "page.ts")],
    outdir: to,
    bundle: true,
    minify: true,
    format: "esm",
    splitting: true,
    chunkNames: "parts/[name]-[hash]",
    target: "es2022",
    loader: { ".woff2": "dataurl" },
    alias: {
      "@stdlib/assert-has-generator-support": resolve(root, "src/tools/generatorSupport.cjs"),
    },
    define: { "process.env.NODE_ENV": '"production"' },
    legalComments: "none",
    logLevel: "warning",
  });
  copyFileSync(resolve(from, "index.html"), resolve(to, "index.html"));
  for (const name of ["functions.js", "functions.json"])
    copyFileSync(resolve(functions, name), resolve(to, name));
}

if (require.main === module) void buildPage();
