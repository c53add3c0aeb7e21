/** Takes apart the calls of our functions in a formula, and reads from the workbook what they are given. */
import type { CellValue, WorkbookPort } from "../../../src/workbook/port";

export type Argument = CellValue | CellValue[][] | null;

export interface Call {
  readonly name: string;
  readonly arguments: readonly string[];
}

/** Parts of a text between commas that stand outside brackets and quotes. */
function parts(text: string): string[] {
  const found = [""];
  let depth = 0;
  let quoted = false;
  for (const letter of text) {
    if (letter === '"') quoted = !quoted;
    else if (!quoted && "([{".includes(letter)) depth += 1;
    else if (!quoted && ")]}".includes(letter)) depth -= 1;
    if (letter === "," && depth === 0 && !quoted) found.push("");
    else found[found.length - 1] += letter;
  }
  return found.map((part) => part.trim());
}

/** The one call of ours in a formula. */
export function callIn(formula: string): Call {
  const start = formula.search(/CARRY\./);
  const open = formula.indexOf("(", start);
  let end = open;
  for (let depth = 0; end < formula.length; end++) {
    if (formula[end] === "(") depth += 1;
    if (formula[end] === ")" && --depth === 0) break;
  }
  const name = formula.slice(start + "CARRY.".length, open);
  return { name, arguments: parts(formula.slice(open + 1, end)) };
}

async function tablePart(
  port: WorkbookPort,
  name: string,
  part: string,
): Promise<CellValue[][] | null> {
  const table = await port.readTable(name);
  if (!table) return null;
  const rows = [table.headers, ...table.rows].map((row) => [...row]);
  const [, first, last] = /\[\[#All\],\[(.+)\]:\[(.+)\]\]/.exec(part) ?? [];
  if (first === undefined || last === undefined) {
    if (part !== "[#All]") throw new Error(`This test does not know ${name}${part}.`);
    return rows;
  }
  const from = table.headers.indexOf(first);
  return rows.map((row) => row.slice(from, table.headers.indexOf(last) + 1));
}

/** What an argument stands for, as plain values; null where it is left out. */
export async function valueOf(port: WorkbookPort, sheet: string, text: string): Promise<Argument> {
  if (text === "") return null;
  if (/^-?[\d.]+$/.test(text)) return Number(text);
  if (/^"[^"]*"$/.test(text)) return text.slice(1, -1);
  const [, table, part] = /^(\w+)(\[.*\])$/.exec(text) ?? [];
  if (table !== undefined && part !== undefined) return tablePart(port, table, part);
  const isCells = /^\$?[A-Z]+\$?\d+(:\$?[A-Z]+\$?\d+)?$/.test(text);
  const values = await port.readRange(isCells ? `${sheet}!${text}` : text);
  if (!values) throw new Error(`This test does not know ${text}.`);
  return values.length === 1 && values[0]!.length === 1 ? values[0]![0]! : values;
}
