/** An answer of the core, or the sentence that says why there is none. */
export type Answer<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly why: string };

/** Asks the core; what it throws becomes a sentence. */
export function attempt<Value>(ask: () => Value): Answer<Value> {
  try {
    return { ok: true, value: ask() };
  } catch (error) {
    return { ok: false, why: sentenceOf(error) };
  }
}

/** The sentence of an error; DomainError and PortError already carry one for the player. */
export const sentenceOf = (error: unknown): string =>
  error instanceof Error ? error.message : String(error);
