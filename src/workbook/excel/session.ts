/** The only door to Excel: every call of the client library's `run` is here. */
import { asPortError } from "./faults";

/** Puts the request off while the player is typing in a cell, instead of failing. */
const PATIENT = { delayForCellEdit: true };

export type Work<Result> = (context: Excel.RequestContext) => Promise<Result>;

const isSupported = (version: string): boolean =>
  Office.context.requirements.isSetSupported("ExcelApi", version);

/**
 * Runs one piece of work in Excel. What Excel says when it fails leaves as a PortError; `doing`
 * names the work in its sentence.
 */
export async function inExcel<Result>(doing: string, work: Work<Result>): Promise<Result> {
  try {
    return await Excel.run(PATIENT, work);
  } catch (error) {
    throw asPortError(doing, error);
  }
}

/**
 * The same with several syncs as one step of Excel's undo, where it can do that (ExcelApi 1.20).
 * Only for work that sets cells: inside such a group Excel refuses what it cannot take back.
 */
export async function inOneStep<Result>(doing: string, work: Work<Result>): Promise<Result> {
  if (!isSupported("1.20")) return inExcel(doing, work);
  try {
    return await Excel.run({ ...PATIENT, mergeUndoGroup: true }, work);
  } catch (error) {
    throw asPortError(doing, error);
  }
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
