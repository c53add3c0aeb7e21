/** The built custom functions as the embedded workbook takes them: what dist/functions.js associates, and dist/functions.json. */

/** Any value a spreadsheet function may take or give; the functions themselves judge it. */
export type CustomFunction = (...args: unknown[]) => unknown;

export interface ParameterMetadata {
  readonly name: string;
  readonly description?: string;
  readonly optional?: boolean;
  readonly dimensionality?: "scalar" | "matrix";
}

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description?: string;
  readonly parameters: readonly ParameterMetadata[];
}

export interface FunctionsBundle {
  readonly functions: ReadonlyMap<string, CustomFunction>;
  readonly metadata: readonly FunctionMetadata[];
}

/** An error that a custom function throws or returns, as Excel's `CustomFunctions.Error`. */
export class CellFault {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

/** The part of Excel's `CustomFunctions` global that the bundle meets. */
export interface FunctionsRegistry {
  associate(id: string, run: CustomFunction): void;
  readonly Error: typeof CellFault;
}

/** A registry to run the bundle against, and the functions that it will hold afterwards. */
export function functionsRegistry(): {
  registry: FunctionsRegistry;
  functions: ReadonlyMap<string, CustomFunction>;
} {
  const functions = new Map<string, CustomFunction>();
  const registry: FunctionsRegistry = {
    associate: (id, run) => void functions.set(id.toUpperCase(), run),
    Error: CellFault,
  };
  return { registry, functions };
}
