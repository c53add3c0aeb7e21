/**
 * Formulas as the port writes them, and as a file stores them. In a file our functions carry the
 * prefix that spreadsheets give to functions of an add-in (`_xldudf_CARRY_`), functions newer than the
 * file format carry `_xlfn.`, and the names inside LET and LAMBDA `_xlpm.` (MS-XLSX 2.2.2). An `@` and
 * a `#` behind a reference are functions in a file: SINGLE and ANCHORARRAY.
 */
import { codeOf, LITERAL, outsideLiterals } from "../package/literals";
import { FUTURE_PREFIXES } from "./futureFunctions";

const CALL = /(?<![\w.\\])([A-Z_][A-Z0-9_.]*)(?=\s*\()/gi;
const SPILLED =
  /((?:(?:'(?:[^']|'')+'|[\p{L}_][\p{L}\p{N}_.]*)!)?\$?[A-Z]{1,3}\$?[1-9]\d{0,6})#(?![A-Z/])/giu;
const OURS = /^CARRY\.([A-Z]+)$/i;

const storedName = (name: string): string => {
  const ours = OURS.exec(name)?.[1];
  if (ours !== undefined) return `_xldudf_CARRY_${ours.toUpperCase()}`;
  const prefix = FUTURE_PREFIXES.get(name.toUpperCase());
  return prefix === undefined ? name : prefix + name.toUpperCase();
};

/** @example storedFormula("=CARRY.AIR(Settings)") // "_xldudf_CARRY_AIR(Settings)" */
export function storedFormula(formula: string): string {
  const spilled = spillsAsCalls(formula.replace(/^=/, ""));
  const called = outsideLiterals(spilled, (code) => code.replace(CALL, storedName));
  return withParameters(singlesAsCalls(called));
}

/** A5# and 'My sheet'!A5# as calls; text in quotes stays. */
function spillsAsCalls(formula: string): string {
  if (!formula.includes("#")) return formula;
  return formula
    .split(/("(?:[^"]|"")*"|\[(?:'.|[^\]'])*\])/)
    .map((part, index) => (index % 2 === 0 ? part.replace(SPILLED, "ANCHORARRAY($1)") : part))
    .join("");
}

/** What an `@` may stand before: a call with its arguments, or a reference or name. */
const SINGLED =
  /@((?:'(?:[^']|'')+'!|[\p{L}_][\p{L}\p{N}_.]*!)?\$?[\p{L}_][\p{L}\p{N}_.$:]*)(?![\p{L}\p{N}_.([])/gu;

function singlesAsCalls(formula: string): string {
  if (!formula.includes("@")) return formula;
  return formula
    .split(/("(?:[^"]|"")*"|\[(?:'.|[^\]'])*\])/)
    .map((part, index) => (index % 2 === 0 ? part.replace(SINGLED, "_xlfn.SINGLE($1)") : part))
    .join("");
}

/** Index of the bracket that closes the one at `from`. */
function closing(formula: string, from: number): number {
  let depth = 0;
  for (let at = from; at < formula.length; at++) {
    const literal = literalAt(formula, at);
    if (literal > at) at = literal - 1;
    else if (formula[at] === "(") depth++;
    else if (formula[at] === ")" && --depth === 0) return at;
  }
  return formula.length;
}

/** The end of a literal that starts at `at`; `at` where none does. */
function literalAt(formula: string, at: number): number {
  if (!`"'[`.includes(formula[at]!)) return at;
  const found = LITERAL.exec(formula.slice(at));
  return found?.index === 0 ? at + found[0].length : at;
}

/** Where the arguments of a call begin and end. */
function argumentsOf(formula: string, open: number): { start: number; end: number }[] {
  const close = closing(formula, open);
  const found: { start: number; end: number }[] = [];
  let depth = 0;
  let start = open + 1;
  for (let at = open + 1; at < close; at++) {
    const literal = literalAt(formula, at);
    if (literal > at) at = literal - 1;
    else if ("({".includes(formula[at]!)) depth++;
    else if (")}".includes(formula[at]!)) depth--;
    else if (formula[at] === "," && depth === 0) {
      found.push({ start, end: at });
      start = at + 1;
    }
  }
  found.push({ start, end: close });
  return found;
}

const BINDS = /_xlfn\.(LET|LAMBDA)\s*(?=\()/gi;

/** Names that LET and LAMBDA bind, with their prefix wherever they are meant. */
function withParameters(formula: string): string {
  if (!formula.includes("_xlfn.L")) return formula;
  const names = new Map<number, { end: number; names: string[] }>();
  for (const match of formula.matchAll(BINDS)) {
    const open = match.index + match[0].length;
    const args = argumentsOf(formula, open);
    const bound = args
      .slice(0, -1)
      .filter((_, index) => match[1]!.toUpperCase() === "LAMBDA" || index % 2 === 0)
      .map(({ start, end }) => formula.slice(start, end).trim())
      .filter(
        (name) =>
          !name.toLowerCase().startsWith("_xlpm.") && /^[\p{L}_][\p{L}\p{N}_.]*$/u.test(name),
      );
    names.set(open, { end: args.at(-1)!.end, names: bound });
  }
  let out = "";
  let at = 0;
  for (const match of formula.matchAll(
    /[\p{L}_\\][\p{L}\p{N}_.\\]*|"(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:'.|[^\]'])*\]/gu,
  )) {
    const word = match[0].toLowerCase();
    const isBound = [...names].some(
      ([from, { end, names: bound }]) =>
        match.index > from &&
        match.index < end &&
        bound.some((name) => name.toLowerCase() === word),
    );
    const end = match.index + match[0].length;
    out +=
      formula.slice(at, match.index) + (isBound && formula[end] !== "!" ? "_xlpm." : "") + match[0];
    at = end;
  }
  return out + formula.slice(at);
}

/** @example typedFormula("_xldudf_CARRY_AIR(Settings)") // "=CARRY.AIR(Settings)" */
export function typedFormula(stored: string): string {
  const typed = outsideLiterals(stored, (code) =>
    code
      .replace(/_xldudf_CARRY_/gi, "CARRY.")
      .replace(/_xlfn\.(_xlws\.)?/gi, "")
      .replace(/_xlpm\./gi, ""),
  );
  return `=${typed}`;
}

export const callsUs = (formula: string): boolean =>
  codeOf(formula).some((code) => /(_xldudf_CARRY_|CARRY\.)[A-Z]+\(/i.test(code));

/** Names of all functions that a formula calls, as people write them, in capitals. */
export const functionsIn = (formula: string): string[] =>
  codeOf(typedFormula(formula)).flatMap((code) =>
    [...code.matchAll(CALL)].map(([, name]) => name!.toUpperCase()),
  );

/** Another workbook's cells, as [1]Sheet!A1, whose values only the spreadsheet has. */
export const OTHER_BOOK = /(^|[^\w\]])\[\d+\]|'[^']*\[\d+\][^']*'!/;
