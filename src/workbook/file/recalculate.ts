/** Works out the formulas of a package, and changes in it only the values that have become others. */
import { areaRef, cellRef, quotedSheet, readArea as readAreaText, type Area } from "../a1";
import type { Blueprint } from "../blueprint/types";
import { readContent, type FormulaContent, type WorkbookContent } from "../package/readContent";
import { writeValues, storedError, type NewValue } from "../package/writeValues";
import type { WorkbookPackage } from "../package/workbookPackage";
import { PortError, type CellValue, type WorkbookPort } from "../port";
import { sentences } from "../sentences";
import { isCellError } from "./cellValues";
import { callsUs, functionsIn, OTHER_BOOK } from "./formulaText";
import { cellKey, plansToCalculate } from "./plansToCalculate";

/** A workbook that a calculating program has opened and worked out. */
export interface Calculated {
  readonly port: Pick<WorkbookPort, "readRange"> & {
    /** The cells that the formula of a cell fills, as "A1:C5"; null where it fills just its own. */
    spillOf(ref: string): string | null;
    /** Whether a function of this name, in capitals, can be worked out. */
    knowsFunction(name: string): boolean;
  };
  close(): void | Promise<void>;
}

export interface Recalculated {
  readonly bytes: Uint8Array;
  /** How many stored values have changed. */
  readonly changed: number;
  /** Formulas that were left with the values they had, as "Log!B5". */
  readonly left: readonly string[];
}

/** Every call gives another answer, so that the one that is stored is as good. */
const BY_CHANCE = ["RAND", "RANDBETWEEN", "RANDARRAY"];
/** Answers of a program that lacks something which the formula needs, not answers of the formula. */
const NOT_AN_ANSWER = ["#NAME?", "#REF!", "#SPILL!", "#CALC!", "#NULL!", "#CYCLE!", "#ERROR!"];
/** Numbers that differ by no more are the same answer, worked out in another order. */
const SAME = 1e-12;

const sameAnswer = (a: CellValue, b: CellValue): boolean => {
  if (typeof a === "number" && typeof b === "number")
    return Math.abs(a - b) <= SAME * Math.max(Math.abs(a), Math.abs(b));
  return isCellError(a) && isCellError(b) ? storedError(a.error) === storedError(b.error) : a === b;
};

type Held = Map<string, CellValue>;

/** One formula and the sheet it is on, by its place among the sheets. */
interface Placed extends FormulaContent {
  readonly sheet: number;
  readonly ref: string;
}

const placedFormulas = ({ sheets }: WorkbookContent): Placed[] =>
  sheets.flatMap(({ part, formulas }, sheet) =>
    formulas.map((formula) => ({
      ...formula,
      sheet,
      ref: `${quotedSheet(part.name)}!${cellRef(formula)}`,
    })),
  );

const keyOf = ({ sheet, row, column }: Placed): string => cellKey(sheet, row, column);
const areaOf = ({ row, column, array }: Placed): Area =>
  array ?? { top: row, left: column, bottom: row, right: column };

/** Whether a program can be trusted with a formula. */
const canCalculate = ({ text, calculable }: Placed, { port }: Calculated): boolean =>
  calculable &&
  !OTHER_BOOK.test(text) &&
  functionsIn(text).every((name) => !BY_CHANCE.includes(name) && port.knowsFunction(name));

/**
 * @param open opens sheets in a program that calculates; resolves when all is worked out
 * @throws PortError "invalid" where the file is signed: a change would make its signature false
 */
export async function recalculate(
  book: WorkbookPackage,
  bytes: Uint8Array,
  open: (blueprint: Blueprint) => Promise<Calculated>,
): Promise<Recalculated> {
  if (book.isSigned) throw new PortError("invalid", sentences.fileSigned);
  const content = readContent(book);
  const formulas = placedFormulas(content);
  const held: Held = new Map();
  const hold = (formula: Placed): void => void held.set(keyOf(formula), formula.value ?? "");
  const probe = await open({ sheets: [{ name: "Sheet1", blocks: [] }] });
  for (const formula of formulas) if (!canCalculate(formula, probe)) hold(formula);
  await probe.close();
  // A formula that the program lets spill where a spreadsheet would not is held, and all worked out again.
  for (let round = 0; ; round++) {
    const calculated = await open(plansToCalculate(content, held));
    try {
      const strays = formulas.filter(
        (formula) =>
          !held.has(keyOf(formula)) && !formula.array && calculated.port.spillOf(formula.ref),
      );
      if (strays.length === 0 || round > 1)
        return await write(book, bytes, content, formulas, held, calculated);
      for (const stray of strays) {
        hold(stray);
        if (!callsUs(stray.text)) continue;
        const [[first = ""] = []] = (await calculated.port.readRange(stray.ref)) ?? [];
        held.set(keyOf(stray), first);
      }
    } finally {
      await calculated.close();
    }
  }
}

async function write(
  book: WorkbookPackage,
  bytes: Uint8Array,
  content: WorkbookContent,
  formulas: readonly Placed[],
  held: Held,
  { port }: Calculated,
): Promise<Recalculated> {
  const changes = content.sheets.map((): NewValue[] => []);
  const left: string[] = [];
  for (const formula of formulas) {
    const { sheet, row, column, ref, value, text } = formula;
    const heldValue = held.get(keyOf(formula));
    if (heldValue !== undefined) {
      if (!callsUs(text)) left.push(ref);
      else if (value === undefined || !sameAnswer(heldValue, value))
        changes[sheet]!.push({ row, column, value: heldValue });
      continue;
    }
    const spill = formula.array ? port.spillOf(ref) : null;
    const before = areaOf(formula);
    const after = formula.dynamic ? readAreaOr(spill, row, column) : before;
    const name = quotedSheet(content.sheets[sheet]!.part.name);
    const answers = await port.readRange(`${name}!${areaRef(after)}`);
    const first = answers?.[0]?.[0];
    if (!answers || first === undefined) continue;
    if (isCellError(first) && NOT_AN_ANSWER.includes(first.error) && !callsUs(text)) {
      left.push(ref);
      continue;
    }
    changes[sheet]!.push(...changesOf(formula, before, after, answers, content, spill));
  }
  const texts = new Map<string, string>();
  let changed = 0;
  changes.forEach((values, index) => {
    if (values.length === 0) return;
    const { path } = content.sheets[index]!.part;
    changed += values.length;
    texts.set(path, writeValues(book.xml(path), values));
  });
  return { bytes: texts.size === 0 ? bytes : book.replacing(texts), changed, left };
}

const readAreaOr = (spill: string | null, row: number, column: number): Area =>
  (spill === null ? null : readAreaText(spill)) ?? {
    top: row,
    left: column,
    bottom: row,
    right: column,
  };

/** Values of one formula that are not what is stored, those that it fills no longer included. */
function changesOf(
  { sheet, row, column, value, array }: Placed,
  before: Area,
  after: Area,
  answers: readonly (readonly CellValue[])[],
  { sheets }: WorkbookContent,
  spill: string | null,
): NewValue[] {
  const { rows } = sheets[sheet]!;
  const stored = (r: number, c: number): CellValue | undefined =>
    r === row && c === column ? value : rows.get(r)?.[c];
  const grown = array !== null && areaRef(before) !== areaRef(after);
  const found: NewValue[] = [];
  // An array of fixed size repeats a single value, and has nothing to show beyond a smaller array.
  const filled = spill === null ? null : readAreaText(spill);
  const answerAt = (r: number, c: number): CellValue => {
    if (array !== null && filled === null) return answers[0]![0]!;
    if (filled !== null && (r > filled.bottom || c > filled.right)) return { error: "#N/A" };
    return answers[r - after.top]?.[c - after.left] ?? "";
  };
  for (let r = after.top; r <= after.bottom; r++)
    for (let c = after.left; c <= after.right; c++) {
      const isFirst = r === row && c === column;
      const answer = answerAt(r, c);
      const now = stored(r, c);
      const same = now === undefined ? answer === "" && !isFirst : sameAnswer(now, answer);
      if (isFirst ? same && !grown : same) continue;
      found.push({
        row: r,
        column: c,
        value: answer,
        ...(isFirst && grown ? { fills: areaRef(after) } : {}),
      });
    }
  if (grown)
    for (let r = before.top; r <= before.bottom; r++)
      for (let c = before.left; c <= before.right; c++) {
        const isInside = r <= after.bottom && c <= after.right;
        if (!isInside && stored(r, c) !== undefined) found.push({ row: r, column: c, value: "" });
      }
  return found;
}
