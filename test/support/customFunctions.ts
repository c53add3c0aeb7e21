/**
 * Runs the built bundle dist/functions.js the way a host does: with a CustomFunctions that collects
 * what is registered. Tests call the very functions that Excel would. The bundle runs outside the
 * test runner's sandbox, where each look at a global makes it twenty times slower.
 */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { runInThisContext } from "node:vm";

export class CellError {
  constructor(
    readonly code: string,
    readonly message: string,
  ) {}
}

export type CustomFunction = (...args: unknown[]) => unknown;

export function loadFunctions(): ReadonlyMap<string, CustomFunction> {
  const functions = new Map<string, CustomFunction>();
  const associate = (id: string, fn: CustomFunction): void => void functions.set(id, fn);
  const bundle = readFileSync(join(__dirname, "../../dist/functions.js"), "utf8");
  const run = runInThisContext(`(CustomFunctions) => {${bundle}\n}`) as (host: object) => void;
  run({ associate, Error: CellError });
  return functions;
}

/** What a cell shows: the answer (a lone one without its array), or the error that was thrown. */
export function ask(fn: CustomFunction | undefined, ...args: unknown[]): unknown {
  try {
    const shown = fn!(...args);
    const lone = Array.isArray(shown) && shown.length === 1 && shown[0].length === 1;
    return lone ? shown[0][0] : shown;
  } catch (thrown) {
    if (thrown instanceof CellError) return thrown;
    throw thrown;
  }
}
