/** References of the port as ranges of Excel. */
import { areaRef, readSheetArea } from "../a1";
import { PortError } from "../port";
import { sentences } from "../sentences";
import { isMissing, isNoRange } from "./faults";
import { inExcel, type Work } from "./session";

/** The range of "Log!A1:C9" or of a defined name. Excel fails at the next sync where there is none. */
export function rangeOf(context: Excel.RequestContext, ref: string): Excel.Range {
  const place = readSheetArea(ref);
  return place
    ? context.workbook.worksheets.getItem(place.sheet).getRange(areaRef(place.area))
    : context.workbook.names.getItem(ref).getRange();
}

/** Work on a place that must be there. */
export async function atPlace<Result>(
  doing: string,
  ref: string,
  work: Work<Result>,
): Promise<Result> {
  try {
    return await inExcel(doing, work);
  } catch (error) {
    if (isMissing(error)) throw new PortError("missing", sentences.noRange(ref));
    throw error;
  }
}

/** The answer of work on something that may be missing; null where it is. */
export async function orNull<Result>(work: Promise<Result>): Promise<Result | null> {
  try {
    return await work;
  } catch (error) {
    if (isNoRange(error)) return null;
    throw error;
  }
}
