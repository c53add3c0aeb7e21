/** From what the core answers, or throws, to what a cell may hold. */
import { DomainError } from "../core/errors";
import { messages } from "../core/messages";

export type Out = string | number;

/** Codes that can carry a message of ours. */
const CODES = { unusable: "#VALUE!", unavailable: "#N/A" } as const;

function cellError(thrown: unknown): CustomFunctions.Error {
  const known = thrown instanceof DomainError;
  const code = CODES[known ? thrown.code : "unusable"] as CustomFunctions.ErrorCode;
  const message = known ? thrown.message : messages.functions.failed(String(thrown));
  return new CustomFunctions.Error(code, message);
}

/** Runs one custom function; every error leaves as a cell error with its sentence. */
export function answer<T extends Out | Out[][]>(ask: () => T): T {
  try {
    return ask();
  } catch (thrown) {
    throw cellError(thrown);
  }
}
