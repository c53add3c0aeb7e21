/** The only door to Excel: every call of the client library's `run` is here. */
import { PortError, type PortFault } from "../port";
import { sentences } from "../sentences";

// What Excel says when something fails, as a PortError with a sentence for the player.

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

/** Puts the request off while the player is typing in a cell, instead of failing. */
const PATIENT = { delayForCellEdit: true };

export type Work<Result> = (context: Excel.RequestContext) => Promise<Result>;

const isSupported = (version: string): boolean =>
  Office.context.requirements.isSetSupported("ExcelApi", version);

// Work that waits because the player is editing a cell: Excel itself says nothing about it.

/** After this long the player is asked to leave the cell. */
const PATIENCE_MS = 1_000;
const held = new Set<object>();
const listeners = new Set<(waiting: boolean) => void>();

/** Tells whether work waits for a cell being edited, as often as that changes. Answers the way to stop. */
export function onWaiting(listener: (waiting: boolean) => void): () => void {
  listeners.add(listener);
  return () => void listeners.delete(listener);
}

function hold(work: object, waits: boolean): void {
  const before = held.size > 0;
  if (waits) held.add(work);
  else held.delete(work);
  const now = held.size > 0;
  if (now !== before) listeners.forEach((tell) => tell(now));
}

/** A request that does not wait is refused at once while a cell is being edited. */
async function isEditing(): Promise<boolean> {
  try {
    await Excel.run(async (context) => {
      context.application.load("calculationMode");
      await context.sync();
    });
    return false;
  } catch (error) {
    return codeOf(error) === "InvalidOperationInCellEditMode";
  }
}

/** Runs work; while it takes longer than a moment, Excel is asked every second what holds it up. */
async function patiently<Result>(run: () => Promise<Result>): Promise<Result> {
  const work = {};
  let isDone = false;
  let timer: ReturnType<typeof setTimeout>;
  const ask = async (): Promise<void> => {
    const waits = await isEditing();
    if (isDone) return;
    hold(work, waits);
    timer = setTimeout(() => void ask(), PATIENCE_MS);
  };
  timer = setTimeout(() => void ask(), PATIENCE_MS);
  try {
    return await run();
  } finally {
    isDone = true;
    clearTimeout(timer);
    hold(work, false);
  }
}

/** Excel refuses changes of a workbook that is open to read only with the same code as of a protected sheet. */
async function whyRefused(error: PortError): Promise<PortError> {
  if (error.fault !== "protected") return error;
  try {
    return await Excel.run(PATIENT, async ({ workbook }) => {
      workbook.load("readOnly");
      await workbook.context.sync();
      return workbook.readOnly ? new PortError("protected", sentences.readOnly) : error;
    });
  } catch {
    return error;
  }
}

/**
 * Runs one piece of work in Excel. What Excel says when it fails leaves as a PortError; `doing`
 * names the work in its sentence.
 */
export function inExcel<Result>(doing: string, work: Work<Result>): Promise<Result> {
  return runWith(PATIENT, doing, work);
}

async function runWith<Result>(
  options: Excel.RunOptions,
  doing: string,
  work: Work<Result>,
): Promise<Result> {
  try {
    return await patiently(() => Excel.run(options, work));
  } catch (error) {
    throw await whyRefused(asPortError(doing, error));
  }
}

/**
 * The same with several syncs as one step of Excel's undo, where it can do that (ExcelApi 1.20).
 * Only for work that sets cells: inside such a group Excel refuses what it cannot take back.
 */
export function inOneStep<Result>(doing: string, work: Work<Result>): Promise<Result> {
  return runWith(isSupported("1.20") ? { ...PATIENT, mergeUndoGroup: true } : PATIENT, doing, work);
}

/** Goes on with objects of an earlier run, as an event's handler needs for its removal. */
export const inSameRun = (
  object: OfficeExtension.ClientObject | OfficeExtension.EventHandlerResult<unknown>,
  work: Work<void>,
): Promise<void> => Excel.run(object.context as Excel.RequestContext, work);

/** Sends what is queued, with calculation and drawing held until it is done. */
export async function syncQuietly(context: Excel.RequestContext): Promise<void> {
  context.application.suspendApiCalculationUntilNextSync();
  context.application.suspendScreenUpdatingUntilNextSync();
  await context.sync();
}

/**
 * Excel stops a request at the first call that fails and keeps what came before. So a change that
 * fails is taken back with `restore`, in a run of its own; where that fails too, the sentence says
 * that the workbook may be half changed.
 */
export async function wholeOrNone<Result>(
  change: () => Promise<Result>,
  restore: (context: Excel.RequestContext) => void | Promise<void>,
): Promise<Result> {
  try {
    return await change();
  } catch (error) {
    try {
      await inExcel("Taking back", async (context) => {
        await restore(context);
        await context.sync();
      });
    } catch {
      // A protected sheet refuses the first call of both: then nothing was written at all.
      const fault = asPortError("", error);
      if (fault.fault === "protected" || fault.fault === "busy") throw error;
      throw new PortError("failed", sentences.halfDone);
    }
    throw error;
  }
}
