/**
 * Writes src/functions/README.md: every custom function with its arguments and an example worked
 * out in the starter workbook. `-- --check` compares instead of writing.
 */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { format, resolveConfig } from "prettier";
import { bundleInNode } from "../page/bundleInNode";
import { openHeadless } from "../page/headless";
import { starterBlueprint } from "../workbook/blueprint";
import type { SheetPlan } from "../workbook/blueprint/types";
import type { CellValue } from "../workbook/port";

const FOLDER = join(__dirname, "../functions");
const PAGE = join(FOLDER, "README.md");
/** FLIGHT spills the most rows. */
const ROOM = { rows: 70, columns: 16 };
/** Rows of a spill that the page shows. */
const SHOWN_ROWS = 6;

interface Parameter {
  readonly name: string;
  readonly description: string;
  readonly optional?: boolean;
}

interface Described {
  readonly id: string;
  readonly description: string;
  readonly parameters: readonly Parameter[];
}

/** Each function's example, from the comment above it. */
function examplesById(): ReadonlyMap<string, string> {
  const examples = new Map<string, string>();
  for (const file of readdirSync(FOLDER).filter((name) => name.endsWith(".ts"))) {
    const source = readFileSync(join(FOLDER, file), "utf8");
    for (const [, id, formula] of source.matchAll(/@customfunction (\w+)[^/]*?@example (=.+)\n/g)) {
      examples.set(id!, formula!);
    }
  }
  return examples;
}

const exampleRow = (place: number): number => 1 + place * ROOM.rows;

/** A sheet with one example below the other, each with room to spill. */
const exampleSheet = (formulas: readonly string[]): SheetPlan => ({
  name: "Examples",
  blocks: formulas.map((formula, place) => ({
    kind: "formula",
    at: `A${exampleRow(place)}`,
    formula,
    spill: ROOM,
  })),
});

/** What each formula shows in the starter workbook, blank margins cut off. */
export async function workOut(formulas: readonly string[]): Promise<CellValue[][][]> {
  const starter = starterBlueprint();
  const blueprint = { sheets: [...starter.sheets, exampleSheet(formulas)] };
  const { port, close } = await openHeadless(blueprint, bundleInNode("dist"));
  const answers: CellValue[][][] = [];
  for (const place of formulas.keys()) {
    const from = exampleRow(place);
    const cells = await port.readRange(`Examples!A${from}:P${from + ROOM.rows - 1}`);
    answers.push(withoutMargins(cells ?? []));
  }
  close();
  return answers;
}

function withoutMargins(cells: readonly CellValue[][]): CellValue[][] {
  const rows = cells.filter((row) => row.some((cell) => cell !== ""));
  const width = Math.max(1, ...rows.map((row) => row.findLastIndex((cell) => cell !== "") + 1));
  return rows.map((row) => row.slice(0, width));
}

function shown(cell: CellValue): string {
  if (typeof cell === "object") return cell.error;
  if (typeof cell !== "number") return String(cell);
  return Number.isInteger(cell) ? String(cell) : cell.toPrecision(4).replace(/\.?0+$/, "");
}

function answerLines(cells: readonly CellValue[][]): string[] {
  const [first = [], ...rest] = cells.map((row) => row.map(shown));
  if (rest.length === 0) return [`Shows ${first.join(" | ")}`];
  const line = (row: readonly string[]): string => `| ${row.join(" | ")} |`;
  const more = rest.length > SHOWN_ROWS ? [``, `and ${rest.length - SHOWN_ROWS} more rows.`] : [];
  return [
    line(first),
    line(first.map(() => "---")),
    ...rest.slice(0, SHOWN_ROWS).map(line),
    ...more,
  ];
}

function section(described: Described, example: string, cells: readonly CellValue[][]): string[] {
  const list = described.parameters.map(({ name, optional }) => (optional ? `[${name}]` : name));
  return [
    `## CARRY.${described.id}(${list.join(", ")})`,
    "",
    described.description,
    "",
    ...described.parameters.map(({ name, description }) => `- \`${name}\`: ${description}`),
    "",
    `\`${example}\``,
    "",
    ...answerLines(cells),
    "",
  ];
}

/** The whole page. */
async function page(): Promise<string> {
  const { functions } = JSON.parse(readFileSync("dist/functions.json", "utf8")) as {
    functions: Described[];
  };
  const examples = examplesById();
  const sorted = [...functions].sort((a, b) => a.id.localeCompare(b.id));
  const formulas = sorted.map(({ id }) => {
    const example = examples.get(id);
    if (example === undefined) throw new Error(`${id} has no @example.`);
    return example;
  });
  const answers = await workOut(formulas);
  const text = [
    "# Function reference",
    "",
    "Made by `npm run reference` from the comments of this folder; the examples are worked out in the",
    "starter workbook, whose data is invented. Arguments in brackets may be left out.",
    "",
    ...sorted.flatMap((described, at) => section(described, formulas[at]!, answers[at]!)),
  ].join("\n");
  return format(text, { ...(await resolveConfig(PAGE)), parser: "markdown" });
}

async function main(): Promise<void> {
  const made = await page();
  if (!process.argv.includes("--check")) return writeFileSync(PAGE, made);
  if (readFileSync(PAGE, "utf8") === made) return console.log("function reference: up to date");
  console.error("src/functions/README.md is out of date: npm run reference");
  process.exitCode = 1;
}

void main();
