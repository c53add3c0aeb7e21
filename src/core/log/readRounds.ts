/** The rounds table: what was thrown on the course, and where it finished. */
import { LONGEST_CARRY_M } from "../constants";
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cells, RoundRow, Settings } from "../types";
import { blanksAreZero, isBlank } from "./cell";
import { type Column, findColumns } from "./headings";
import { TableRow } from "./tableRow";

const ROUND_HEADERS = {
  course: ["course"],
  distance: ["distance", "length"],
  rise: ["rise", "elevation"],
  headwind: ["headwind", "head wind", "wind"],
  disc: ["disc", "disc name", "discs"],
  power: ["power"],
  finish: ["finish", "long/short"],
  note: ["note", "notes", "comment"],
} as const;

/**
 * Reads results with their header row; Distance, Disc and Finish (long +, short −) must be there. A
 * row that lacks one of them is not filled in yet and passed over. Blank power is smooth; blank rise
 * and headwind are 0. A finish of 0 counts, unless this host sends blanks as 0. Units by header or
 * settings. A cell that should be a number and is not throws an `unusable` error that names the row.
 *
 * @example
 * readRounds([["Disc", "Distance", "Finish"], ["Copper mid", 300, -12]], settings)[0]?.finishM // −3.6576
 */
export function readRounds(cells: Cells, settings: Settings): RoundRow[] {
  const columns = findColumns(cells[0] ?? [], ROUND_HEADERS);
  for (const [field, header] of REQUIRED) {
    if (!columns[field]) throw unusable(messages.log.noColumn(header, "The rounds table"));
  }
  const zeroIsBlank = blanksAreZero(
    cells,
    [columns.disc, columns.note].map((column) => column?.index ?? -1),
  );
  const rounds: RoundRow[] = [];
  for (let index = 1; index < cells.length; index++) {
    const row = new TableRow(cells[index]!, index + 1, settings);
    const disc = row.text(columns.disc);
    const distanceM = row.metresAway(columns.distance, "distance");
    const finish = row.cell(columns.finish);
    const noFinish = isBlank(finish) || (finish === 0 && zeroIsBlank);
    if (disc === "" || distanceM === 0 || noFinish) continue;
    rounds.push({
      row: row.row,
      course: row.text(columns.course),
      disc,
      power: row.power(columns.power),
      distanceM,
      riseM: row.metres(columns.rise, "rise"),
      headwindMps: row.mps(columns.headwind, "headwind"),
      finishM: finishM(row, columns.finish),
      offlineM: null,
      inCircle: null,
    });
  }
  return rounds;
}

/** No farther from the target than any throw carries. */
function finishM(row: TableRow, column: Column | undefined): number {
  const metres = row.metres(column, "finish");
  if (Math.abs(metres) > LONGEST_CARRY_M)
    throw unusable(messages.log.finishTooFar(row.row, row.number(column, "finish")));
  return metres;
}

const REQUIRED = [
  ["disc", "Disc"],
  ["distance", "Distance"],
  ["finish", "Finish"],
] as const;
