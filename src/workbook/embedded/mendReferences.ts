/** Mends two faults in what the engine (0.25.1) remembers of the references in formulas. */
import {
  IDependencyManagerService,
  IFormulaDependencyGenerator,
  IFunctionService,
  ISuperTableService,
} from "@univerjs/engine-formula";
import type { Engine } from "./engine";

type Mendable = Pick<Engine, "injector">;

/** Has every formula read anew, with its tables where they stand now. */
export const forgetFormulas = ({ injector }: Mendable): void =>
  injector.get(IFunctionService).deleteFormulaAstCacheKey("");

/**
 * A formula that was read is remembered with the ranges of its tables. After a change of a table the
 * engine reads it anew for one calculation only, and in the next ones goes back to what it remembered.
 */
function followTables(engine: Mendable): void {
  engine.injector.get(ISuperTableService).update$.subscribe(() => forgetFormulas(engine));
}

/**
 * The engine finds what every formula refers to in each calculation, but adds it to what it found in
 * the ones before. So that grows with each edit, and once a table changes, names formulas by numbers
 * that they no longer have.
 */
function startAfresh({ injector }: Mendable): void {
  const known = injector.get(IDependencyManagerService);
  const finder = injector.get(IFormulaDependencyGenerator);
  const generate = finder.generate.bind(finder);
  finder.generate = (...asked) => {
    known.reset();
    return generate(...asked);
  };
}

export function mendReferences(engine: Mendable): void {
  followTables(engine);
  startAfresh(engine);
}
