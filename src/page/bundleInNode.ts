/** Loads the built custom functions in Node, by the same global as in Excel and in the page. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import {
  type FunctionMetadata,
  type FunctionsBundle,
  functionsRegistry,
} from "../workbook/embedded/engine";

/** Reads functions.js and functions.json of a folder such as dist. */
export function bundleInNode(folder: string): FunctionsBundle {
  const source = readFileSync(join(folder, "functions.js"), "utf8");
  const described = JSON.parse(readFileSync(join(folder, "functions.json"), "utf8")) as {
    functions: FunctionMetadata[];
  };
  const { registry, functions } = functionsRegistry();
  new Function("CustomFunctions", source)(registry);
  return { functions, metadata: described.functions };
}
