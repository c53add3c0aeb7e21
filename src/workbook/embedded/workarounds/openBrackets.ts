/**
 * Cures: after "Throws[" was typed, every later formula is read as if inside a bracket. Seen in 0.25.1.
 *
 * Before each formula the reader forgets all it knew of the one before, but not how many square brackets
 * were open. The help for arguments reads formulas while they are typed.
 */
import type { Injector } from "@univerjs/core";
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import { inside } from "./seenIn";

interface Reader {
  _resetTemp(): void;
  _squareBracketState: number;
}

export function mendOpenBrackets({ injector }: { readonly injector: Injector }): void {
  const reader = inside<Reader>(
    injector.get(LexerTreeBuilder),
    "_resetTemp",
    "_squareBracketState",
  );
  const forget = reader._resetTemp.bind(reader);
  reader._resetTemp = () => {
    forget();
    reader._squareBracketState = 0;
  };
}
