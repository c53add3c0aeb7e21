/** From what the core answers, or throws, to what a cell may hold. */
import { DomainError, type ErrorCode } from "../core/errors";
import { messages } from "../core/messages";

/** A cell that leaves: a blank is "", since null, undefined and NaN would all show as 0. */
export type Out = string | number | CustomFunctions.Error;
export type Spill = Out[][];

/** Codes that can carry a message of ours. */
const CODES = { unusable: "#VALUE!", unavailable: "#N/A" } as const;

const cellError = (code: ErrorCode, message: string): CustomFunctions.Error =>
  new CustomFunctions.Error(CODES[code] as CustomFunctions.ErrorCode, message);

/** One cell of a spill that has no answer, with the sentence that says why. */
export const noAnswer = (why: string): CustomFunctions.Error => cellError("unavailable", why);

/** The error for a cell that an error of the core, or an unexpected one, comes to. */
export function errorOf(thrown: unknown): CustomFunctions.Error {
  if (thrown instanceof DomainError) return cellError(thrown.code, thrown.message);
  return cellError("unusable", messages.functions.failed(String(thrown)));
}

/** Runs one custom function; every error leaves as a cell error with its sentence. */
export function answer<T extends Out | Spill>(ask: () => T): T {
  try {
    return ask();
  } catch (thrown) {
    throw errorOf(thrown);
  }
}
