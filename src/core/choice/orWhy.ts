import { DomainError } from "../errors";

/** An answer, or the sentence that says why there is none. */
export function orWhy<Answer>(ask: () => Answer): { answer: Answer | null; why: string | null } {
  try {
    return { answer: ask(), why: null };
  } catch (thrown) {
    if (thrown instanceof DomainError && thrown.code === "unavailable")
      return { answer: null, why: thrown.message };
    throw thrown;
  }
}
