/**
 * Cures: each edit makes the next slower, and formulas are worked out in the place of others once a
 * table has changed. Seen in 0.25.1.
 *
 * The engine finds what every formula refers to in each calculation, but adds it to what it found in the
 * ones before. So that grows with each edit, and names formulas by numbers that they no longer have.
 */
import type { Injector } from "@univerjs/core";
import { IDependencyManagerService, IFormulaDependencyGenerator } from "@univerjs/engine-formula";

export function mendPiledReferences({ injector }: { readonly injector: Injector }): void {
  const known = injector.get(IDependencyManagerService);
  const finder = injector.get(IFormulaDependencyGenerator);
  const generate = finder.generate.bind(finder);
  finder.generate = (...asked) => {
    known.reset();
    return generate(...asked);
  };
}
