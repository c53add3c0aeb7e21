/**
 * `npm run demo`: the starter workbook in the terminal, without a browser: the card, the plan of
 * the course and one explained pick; the plots of the pane as SVG in dist/demo.
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { starterBlueprint } from "../workbook/blueprint";
import { bundleInNode } from "../page/bundleInNode";
import { openHeadless } from "../page/headless";
import { drawPlots, explainHole } from "./demo/pane";
import type { CellValue, WorkbookPort } from "../workbook/port";

const DIST = join(__dirname, "../../dist");
const OUT = join(DIST, "demo");
const SHOWN_HOLE = 2;

const share = (part: CellValue): string => `${Math.round(Number(part) * 100)} %`;

function shown(cell: CellValue, header: string): string {
  if (typeof cell === "object") return cell.error;
  if (typeof cell !== "number") return cell === true ? "yes" : String(cell);
  if (header === "Power" || header === "Chance") return share(cell);
  return cell.toFixed(header === "Strokes" ? 2 : 0);
}

/** Columns of a spilled answer as an aligned table; rows that are wholly blank are left out. */
function table(cells: readonly CellValue[][], headers: readonly string[]): string {
  const at = headers.map((header) => cells[0]!.indexOf(header));
  const rows = cells
    .slice(1)
    .filter((row) => row[0] !== "")
    .map((row) => at.map((column, place) => shown(row[column]!, headers[place]!)));
  const widths = headers.map((header, place) =>
    Math.max(header.length, ...rows.map((row) => row[place]!.length)),
  );
  const line = (row: readonly string[]): string =>
    row
      .map((text, place) => (place === 0 ? text.padEnd(widths[0]!) : text.padStart(widths[place]!)))
      .join("  ");
  return [headers, ...rows].map(line).join("\n");
}

async function spill(port: WorkbookPort, name: string): Promise<CellValue[][]> {
  const cells = await port.readRange(name);
  if (cells === null) throw new Error(`The starter workbook has no ${name}.`);
  return cells;
}

async function main(): Promise<void> {
  const { port, close } = await openHeadless(starterBlueprint(), bundleInNode(DIST));
  const card = await spill(port, "MyCard");
  const plan = await spill(port, "MyPlan");
  console.log("The card, in ft: eight of ten next smooth throws stop between Low and High.\n");
  console.log(table(card, ["Disc", "Carry", "Low", "High", "Known to", "Throws", "Trend"]));
  console.log("\nThe plan, in ft\n");
  console.log(
    table(plan, [
      "Hole",
      "Plays like",
      "Low",
      "High",
      "Disc",
      "Power",
      "Chance",
      "Strokes",
      "Second choice",
    ]),
  );
  console.log(`\n${await explainHole(port, SHOWN_HOLE)}`);
  mkdirSync(OUT, { recursive: true });
  for (const [name, svg] of Object.entries(await drawPlots(port))) {
    writeFileSync(join(OUT, `${name}.svg`), svg);
    console.log(`dist/demo/${name}.svg is written.`);
  }
  close();
  console.log(
    "\nThrow only on a clear field, with nobody within range. Slope and wind figures are",
  );
  console.log("estimates; the course's and the event's rules and officials decide.");
}

void main();
