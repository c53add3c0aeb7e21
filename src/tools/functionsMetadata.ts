/**
 * Writes functions.json from the comments of src/functions. The official plugin cannot be
 * used: it never writes `allowErrorForDataTypeAny`, without which Excel does not call a
 * function at all when one cell of a range is an error.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import { generateCustomFunctionsMetadata } from "custom-functions-metadata";
import { Compilation, sources, type Compiler } from "webpack";

/** The function reference as a page of the host; each function has its id as its anchor. */
export const REFERENCE_PAGE = "functions.html";

const FOLDER = resolve(__dirname, "../functions");

/** The files that hold custom functions, known by their tag. */
const functionFiles = (): string[] =>
  readdirSync(FOLDER)
    .filter((name) => name.endsWith(".ts"))
    .map((name) => join(FOLDER, name))
    .filter((file) => readFileSync(file, "utf8").includes("@customfunction"))
    .sort();

interface DescribedFunction {
  readonly id: string;
  readonly helpUrl?: string;
}

/**
 * The text of functions.json.
 *
 * @param host where `dist/` will be read; each function then points to its place in the reference
 *   there. Without it none has a help address.
 */
export async function functionsMetadata(host?: string): Promise<string> {
  const { metadataJson, errors } = await generateCustomFunctionsMetadata(functionFiles());
  if (errors.length > 0) throw new Error(errors.join("\n"));
  const described = (JSON.parse(metadataJson) as { functions: DescribedFunction[] }).functions;
  const functions = described.map((one) =>
    host === undefined ? one : { ...one, helpUrl: `${host}/${REFERENCE_PAGE}#${one.id}` },
  );
  return `${JSON.stringify({ allowErrorForDataTypeAny: true, functions }, null, 2)}\n`;
}

/** Emits functions.json beside the bundle. */
export class FunctionsMetadataPlugin {
  constructor(private readonly host: string) {}

  apply(compiler: Compiler): void {
    compiler.hooks.thisCompilation.tap("FunctionsMetadata", (compilation) => {
      compilation.hooks.processAssets.tapPromise(
        { name: "FunctionsMetadata", stage: Compilation.PROCESS_ASSETS_STAGE_ADDITIONAL },
        async () =>
          compilation.emitAsset(
            "functions.json",
            new sources.RawSource(await functionsMetadata(this.host)),
          ),
      );
    });
  }
}
