/** Cells whose formula calls one of our functions: finding them, and writing them back. */
import { areaRef, cellRef, quotedSheet, readSheetArea, type Spot } from "../a1";
import { callsUs, typedFormula } from "../file/formulaText";
import { type FormulaCell, PortError, type Progress } from "../port";
import { sentences } from "../sentences";
import { inExcel, isMissing, isNoRange, syncQuietly, type Work } from "./session";

/**
 * Excel shows a reference to the row of a formula as Table[@Column] or Table[@[Two words]]; the
 * port and files write it in full. Without the table's name Excel understands both forms alike.
 *
 * @example thisRowInFull("=Course[@Hole]") // "=Course[[#This Row],[Hole]]"
 */
export const thisRowInFull = (formula: string): string =>
  formula
    .replace(/\[@\[([^\]]+)\]\]/g, "[[#This Row],[$1]]")
    .replace(/\[@([^[\]]+)\]/g, "[[#This Row],[$1]]");

interface Found extends FormulaCell {
  readonly sheet: string;
  readonly spot: Spot;
  /** Whether it shows #NAME?, as Excel does where it met the formula without our functions. */
  readonly unanswered: boolean;
}

const UNANSWERED = "#NAME?";

/** Formulas written in one request, so that progress can be shown and work be stopped. */
const AT_ONCE = 20;

/**
 * Every cell with a formula of ours. A cell that a formula spills into may show that formula as its
 * own; only the one it starts from is a formula.
 */
export async function findOurs(context: Excel.RequestContext): Promise<Found[]> {
  const { worksheets } = context.workbook;
  worksheets.load("items/name");
  await context.sync();
  const used = worksheets.items.map((sheet) => ({
    name: sheet.name,
    sheet,
    range: sheet.getUsedRangeOrNullObject(true).load("address,formulas,values"),
  }));
  await context.sync();
  const candidates = used.flatMap(({ name, sheet, range }) =>
    range.isNullObject ? [] : candidatesIn(name, sheet, range),
  );
  const parents = candidates.map(({ cell }) => cell.getSpillParentOrNullObject().load("address"));
  if (parents.length > 0) await context.sync();
  return candidates.flatMap(({ cell: _, ...found }, index) => {
    const parent = parents[index]!;
    const from = parent.isNullObject ? null : readSheetArea(parent.address)?.area;
    const isOwn = !from || (from.top === found.spot.row && from.left === found.spot.column);
    return isOwn ? [found] : [];
  });
}

function candidatesIn(
  name: string,
  sheet: Excel.Worksheet,
  range: Excel.Range,
): (Found & { readonly cell: Excel.Range })[] {
  const { top, left } = readSheetArea(range.address)!.area;
  return (range.formulas as unknown[][]).flatMap((row, down) =>
    row.flatMap((formula, right) => {
      if (typeof formula !== "string" || !formula.startsWith("=") || !callsUs(formula)) return [];
      const spot = { row: top + down, column: left + right };
      const at = cellRef(spot);
      const ref = `${quotedSheet(name)}!${at}`;
      const unanswered = range.values[down]![right] === UNANSWERED;
      const cell = sheet.getRange(at);
      return [{ ref, sheet: name, spot, formula: asTyped(formula), unanswered, cell }];
    }),
  );
}

/** Without the prefix that a file stores, and with this row written out. */
const asTyped = (formula: string): string => thisRowInFull(typedFormula(formula.slice(1)));

/**
 * Writes our formulas back, so that an Excel that met them without the add-in asks it again: all, or
 * those that show #NAME?. Each stays what it is, so stopping half-way harms nothing. Those on
 * protected sheets are left, which is said at the end. Answers how many were written.
 */
export const repairOurs =
  (which: "all" | "unanswered", progress?: Progress, stop?: AbortSignal): Work<number> =>
  async (context) => {
    const { worksheets } = context.workbook;
    const found = (await findOurs(context)).filter(
      ({ unanswered }) => which === "all" || unanswered,
    );
    worksheets.load("items/name,items/protection/protected");
    if (found.length > 0) await context.sync();
    const closed = new Set(
      found.length === 0
        ? []
        : worksheets.items.filter(({ protection }) => protection.protected).map(({ name }) => name),
    );
    const writable = found.filter(({ sheet }) => !closed.has(sheet));
    let done = 0;
    while (done < writable.length && !stop?.aborted) {
      const some = writable.slice(done, done + AT_ONCE);
      for (const { sheet, spot, formula } of some)
        worksheets.getItem(sheet).getRange(cellRef(spot)).formulas = [[formula]];
      await syncQuietly(context);
      done += some.length;
      progress?.(done, writable.length);
    }
    const left = found.filter(({ sheet, unanswered }) => unanswered && closed.has(sheet));
    if (left.length > 0)
      throw new PortError(
        "protected",
        sentences.notRepaired([...new Set(left.map(({ sheet }) => sheet))].join(", ")),
      );
    return done;
  };

// References of the port as ranges of Excel.

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
