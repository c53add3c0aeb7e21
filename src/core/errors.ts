/**
 * Why there is no answer. `unusable`: an argument makes no sense (Excel's #VALUE!).
 * `unavailable`: the arguments are fine but there is nothing to answer from, or the
 * answer lies outside what the model covers (Excel's #N/A).
 */
export type ErrorCode = "unusable" | "unavailable";

/** The one error that core throws. Its message is a sentence for the player: what, and where. */
export class DomainError extends Error {
  constructor(
    readonly code: ErrorCode,
    message: string,
  ) {
    super(message);
    this.name = "DomainError";
  }
}

export const unusable = (message: string): DomainError => new DomainError("unusable", message);
export const unavailable = (message: string): DomainError =>
  new DomainError("unavailable", message);
