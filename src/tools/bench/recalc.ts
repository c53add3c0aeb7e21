/**
 * 2,000 cells with our functions over a log of 10,000 throws against 2,000 cells with the nearest
 * native formulas, each in a workbook of its own: the time from an edit of the log until all is
 * calculated. Run after `npm run build`, on the functions as they are built.
 */
import { resolve } from "node:path";
import { bundleInNode } from "../../page/bundleInNode";
import { openHeadless } from "../../page/headless";
import type { Blueprint, FormulaPlan } from "../../workbook/blueprint/types";
import type { BenchRow } from "../bench";

const THROWS = 10_000;
const CELLS = 2_000;
const DISCS = 20;
const EDITS = 5;
const MOST_TIMES_NATIVE = 2;

const disc = (index: number): string => `Disc ${(index % DISCS) + 1}`;
const carry = (index: number): number => 200 + (index % DISCS) * 10 + ((index * 37) % 23);

/** Half of the cells ask for a disc's figure, half for the disc of a distance. */
function blueprint(figure: string, pick: string): Blueprint {
  const cells: FormulaPlan[] = Array.from({ length: CELLS }, (_, index) => ({
    kind: "formula",
    at: `${index % 2 === 0 ? "C" : "D"}${Math.floor(index / 2) + 1}`,
    formula: index % 2 === 0 ? figure : pick,
  }));
  const asked = Array.from({ length: CELLS / 2 }, (_, index) => [disc(index), 200 + (index % 190)]);
  return {
    sheets: [
      {
        name: "Log",
        blocks: [
          {
            kind: "table",
            name: "Throws",
            at: "A1",
            columns: ["Date", "Disc", "Carry"].map((header) => ({ header, width: 12 })),
            rows: Array.from({ length: THROWS }, (_, index) => [
              45_000 + Math.floor(index / 40),
              disc(index),
              carry(index),
            ]),
          },
        ],
      },
      {
        name: "Answers",
        blocks: [
          { kind: "cells", at: "A1", values: asked },
          ...cells.map((cell) => ({
            ...cell,
            formula: cell.formula.replaceAll("{row}", cell.at.slice(1)),
          })),
        ],
      },
    ],
  };
}

/** Median milliseconds from an edit in the log until all is calculated. */
async function recalculation(plan: Blueprint): Promise<number> {
  const book = await openHeadless(plan, bundleInNode(resolve(__dirname, "../../../dist")));
  const times: number[] = [];
  for (let edit = 0; edit < EDITS; edit++) {
    const start = performance.now();
    await book.port.writeRange("Log!C5000", [[300 + edit]]);
    await book.calculated();
    times.push(performance.now() - start);
  }
  book.close();
  return times.sort((a, b) => a - b)[Math.floor(EDITS / 2)]!;
}

export async function rows(): Promise<BenchRow[]> {
  const native = await recalculation(
    blueprint(
      "=AVERAGEIFS(Throws[Carry],Throws[Disc],A{row})",
      "=INDEX(Throws[Disc],MATCH(B{row},Throws[Carry],0))",
    ),
  );
  const ours = await recalculation(
    blueprint("=CARRY.SMOOTH(A{row},Throws[#All])", "=CARRY.BEST(B{row},Throws[#All])"),
  );
  return [
    {
      name: "2,000 cells of ours over 10,000 throws against native",
      target: `<= ${MOST_TIMES_NATIVE} x`,
      result: `${(ours / native).toFixed(2)} x (${ours.toFixed(0)} against ${native.toFixed(0)} ms)`,
      ok: ours <= MOST_TIMES_NATIVE * native,
    },
  ];
}
