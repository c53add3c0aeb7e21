/** Quoted text, quoted sheet names and bracketed columns: never references or function names. */
export const LITERAL = /("(?:[^"]|"")*"|'(?:[^']|'')*'|\[(?:'.|[^\]'])*\])/;

/** A formula with everything changed that is code, and its literals as they are. */
export const outsideLiterals = (formula: string, change: (code: string) => string): string =>
  formula
    .split(LITERAL)
    .map((part, index) => (index % 2 === 0 ? change(part) : part))
    .join("");

/** The parts of a formula that are code. */
export const codeOf = (formula: string): string[] =>
  formula.split(LITERAL).filter((_, index) => index % 2 === 0);
