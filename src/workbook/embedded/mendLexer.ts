/** Mends a fault of the engine's formula reader (0.25.1). */
import { LexerTreeBuilder } from "@univerjs/engine-formula";
import type { Engine } from "./engine";

interface ReaderState {
  _resetTemp(): void;
  _squareBracketState: number;
}

/**
 * Before each formula the reader forgets all it knew of the one before, but not how many square
 * brackets were open. The help for arguments reads formulas while they are typed, so after
 * "Throws[" every later formula would be read as if inside a bracket.
 */
export function mendLexer({ injector }: Pick<Engine, "injector">): void {
  const reader = injector.get(LexerTreeBuilder) as unknown as ReaderState;
  const forget = reader._resetTemp.bind(reader);
  reader._resetTemp = () => {
    forget();
    reader._squareBracketState = 0;
  };
}
