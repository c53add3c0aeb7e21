/**
 * Cures: formulas on a table go back to its old rows after the table has changed. Seen in 0.25.1.
 *
 * A formula that was read is remembered with the ranges of its tables. After a change of a table the
 * engine reads it anew for one calculation only, and in the next ones goes back to what it remembered.
 */
import type { Injector } from "@univerjs/core";
import { IFunctionService, ISuperTableService } from "@univerjs/engine-formula";

interface Mendable {
  readonly injector: Injector;
}

/** Has every formula read anew, with its tables and names where they stand now. */
export const forgetFormulas = ({ injector }: Mendable): void =>
  injector.get(IFunctionService).deleteFormulaAstCacheKey("");

export function mendRememberedTables(engine: Mendable): void {
  engine.injector.get(ISuperTableService).update$.subscribe(() => forgetFormulas(engine));
}
