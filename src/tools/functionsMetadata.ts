/**
 * Writes functions.json from the comments of src/functions. The official plugin cannot be
 * used: it never writes `allowErrorForDataTypeAny`, without which Excel does not call a
 * function at all when one cell of a range is an error.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { Compilation, sources, type Compiler } from "webpack";

const FOLDER = resolve(__dirname, "../functions");

/** The files that hold custom functions, known by their tag. */
const functionFiles = (): string[] =>
  readdirSync(FOLDER)
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(FOLDER, name))
    .filter((file) => readFileSync(file, "utf8").includes("@customfunction"))
    .sort();

/** The text of functions.json. */
export async function functionsMetadata(): Promise<string> {
  const { metadataJson, errors } = await generateCustomFunctionsMetadata(functionFiles());
  if (errors.length > 0) throw new Error(errors.join("\n"));
  const { functions } = JSON.parse(metadataJson) as { functions: unknown[] };
  return `${JSON.stringify({ allowErrorForDataTypeAny: true, functions }, null, 2)}\n`;
}

/** Emits functions.json beside the bundle. */
export class FunctionsMetadataPlugin {
  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("FunctionsMetadata", (compilation) => {
      compilation.hooks.processAssets.tapPromise(
        { name: "FunctionsMetadata", stage: Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL },
        async () =>
          compilation.emitAsset("functions.json", new sources.RawSource(await functionsMetadata())),
      );
    });
  }
}
