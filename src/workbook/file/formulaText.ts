/**
 * Formulas as the port writes them, and as a file stores them. In a file our functions carry the
 * prefix that spreadsheets give to functions of an add-in (`_xldudf_CARRY_`), and functions newer
 * than the file format carry `_xlfn.` (MS-XLSX 2.2.2, future functions).
 */
const NEWER = ["SEQUENCE", "UNIQUE", "XLOOKUP", "XMATCH", "TEXTJOIN", "CONCAT", "IFS", "SWITCH"];
/** These carry a second prefix as well. */
const NEWER_SHEET = ["FILTER", "SORT"];

/** Quoted text, quoted sheet names and bracketed columns, which are never function names. */
const LITERAL = /("(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^\]]*\])/;

const outsideLiterals = (formula: string, change: (code: string) => string): string =>
  formula
    .split(LITERAL)
    .map((part, index) => (index % 2 === 0 ? change(part) : part))
    .join("");

const call = (names: readonly string[]): RegExp =>
  new RegExp(`(?<![\\w.])(${names.join("|")})(?=\\()`, "gi");

/** @example storedFormula("=CARRY.AIR(Settings)") // "_xldudf_CARRY_AIR(Settings)" */
export function storedFormula(formula: string): string {
  return outsideLiterals(formula.replace(/^=/, ""), (code) =>
    code
      .replace(
        /(?<![\w.])CARRY\.([A-Z]+)(?=\()/gi,
        (_, name: string) => `_xldudf_CARRY_${name.toUpperCase()}`,
      )
      .replace(call(NEWER), (name) => `_xlfn.${name.toUpperCase()}`)
      .replace(call(NEWER_SHEET), (name) => `_xlfn._xlws.${name.toUpperCase()}`),
  );
}

/** @example typedFormula("_xldudf_CARRY_AIR(Settings)") // "=CARRY.AIR(Settings)" */
export function typedFormula(stored: string): string {
  const typed = outsideLiterals(stored, (code) =>
    code.replace(/_xldudf_CARRY_/gi, "CARRY.").replace(/_xlfn\.(_xlws\.)?/gi, ""),
  );
  return `=${typed}`;
}

export const callsUs = (formula: string): boolean =>
  formula
    .split(LITERAL)
    .some((part, index) => index % 2 === 0 && /(_xldudf_CARRY_|CARRY\.)[A-Z]+\(/i.test(part));
