/** What Excel says when something fails, as a PortError with a sentence for the player. */
import { PortError, type PortFault } from "../port";
import { sentences } from "../sentences";

interface Said {
  readonly fault: PortFault;
  readonly sentence: string;
}

/** Codes of the client library and of Excel that mean something to the player. */
const CODES: Readonly<Record<string, Said>> = {
  AccessDenied: { fault: "protected", sentence: sentences.sheetProtected },
  InvalidOperationInCellEditMode: { fault: "busy", sentence: sentences.cellBeingEdited },
  ApiNotFound: { fault: "unsupported", sentence: sentences.excelTooOld },
  ApiNotAvailable: { fault: "unsupported", sentence: sentences.excelTooOld },
  UnsupportedOperation: { fault: "unsupported", sentence: sentences.excelTooOld },
  RequestPayloadSizeLimitExceeded: { fault: "invalid", sentence: sentences.tooMuchAtOnce },
  ResponsePayloadSizeLimitExceeded: { fault: "invalid", sentence: sentences.tooMuchAtOnce },
};

export const codeOf = (error: unknown): string =>
  typeof error === "object" && error !== null && "code" in error ? String(error.code) : "";

export function asPortError(doing: string, error: unknown): PortError {
  if (error instanceof PortError) return error;
  const said = CODES[codeOf(error)];
  const made = said
    ? new PortError(said.fault, said.sentence)
    : new PortError("failed", sentences.failed(doing));
  made.cause = error;
  return made;
}

const hasCode = (error: unknown, codes: readonly string[]): boolean =>
  codes.includes(codeOf(error instanceof PortError ? error.cause : error));

/** Whether Excel failed because something it was asked for by name is not there. */
export const isMissing = (error: unknown): boolean =>
  hasCode(error, ["ItemNotFound", "InvalidReference"]);

/** The same, or because a name stands for no range. */
export const isNoRange = (error: unknown): boolean =>
  isMissing(error) || hasCode(error, ["InvalidArgument"]);
