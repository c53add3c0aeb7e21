/** The course table: one hole a row. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cells, Hole, Settings } from "../types";
import { crosswindMps, headwindMps, parseDirection } from "../flight/wind";
import { blanksAreZero, isBlank } from "./cell";
import { type Column, findColumns } from "./headings";
import { TableRow } from "./tableRow";

const COURSE_HEADERS = {
  course: ["course"],
  hole: ["hole", "no", "tee"],
  par: ["par"],
  distance: ["distance", "length"],
  rise: ["rise", "elevation"],
  headwind: ["headwind", "head wind", "wind"],
  longTrouble: ["long trouble", "trouble long", "trouble behind"],
  shortTrouble: ["short trouble", "trouble short", "trouble in front"],
  leftTrouble: ["left trouble", "trouble left"],
  rightTrouble: ["right trouble", "trouble right"],
  bearing: ["bearing", "direction"],
  line: ["line"],
  note: ["note", "notes", "comment"],
} as const;

/**
 * Reads a course with its header row; only Distance must be there. A row without a distance is not
 * filled in yet and passed over; a hole without a name is named by its place. Blank or 0: no rise, no
 * trouble, par not known. Distances and wind in the units of the settings or of the header; a bearing in
 * degrees clockwise from north, or a compass point. A hole with a bearing and a blank headwind takes head
 * and crosswind from the wind of the settings; else a blank headwind is 0, and the crosswind not known,
 * 0. A cell that should be a number and is not, or a distance below 0, throws an `unusable` error that
 * names the row: a plan with a hole missing would mislead.
 *
 * @example
 * readCourse([["Hole", "Distance"], [1, 300]], DEFAULT_SETTINGS)[0]?.distanceM // 91.44
 */
export function readCourse(cells: Cells, settings: Settings): Hole[] {
  const columns = findColumns(cells[0] ?? [], COURSE_HEADERS);
  if (!columns.distance) throw unusable(messages.log.noColumn("Distance", "The course"));
  const zeroIsBlank = blanksAreZero(
    cells.slice(1),
    [columns.line, columns.note, columns.course].map((column) => column?.index ?? -1),
  );
  const holes: Hole[] = [];
  for (let index = 1; index < cells.length; index++) {
    const row = new TableRow(cells[index]!, index + 1, settings);
    const distanceM = row.metresAway(columns.distance, "distance");
    if (distanceM === 0) continue;
    const bearingDegrees = bearingIn(row, columns.bearing, zeroIsBlank);
    holes.push({
      row: row.row,
      course: row.text(columns.course),
      hole: row.text(columns.hole) || `${holes.length + 1}`,
      par: row.number(columns.par, "par") || null,
      distanceM,
      riseM: row.metres(columns.rise, "rise"),
      ...windAt(row, columns.headwind, bearingDegrees, settings, zeroIsBlank),
      longTroubleM: row.metresAway(columns.longTrouble, "long trouble") || null,
      shortTroubleM: row.metresAway(columns.shortTrouble, "short trouble") || null,
      leftTroubleM: row.metresAway(columns.leftTrouble, "left trouble") || null,
      rightTroubleM: row.metresAway(columns.rightTrouble, "right trouble") || null,
      bearingDegrees,
      line: row.text(columns.line),
      note: row.text(columns.note),
    });
  }
  return holes;
}

/** Whether a cell says nothing; a 0 where this host sends blanks as 0. */
const saysNothing = (row: TableRow, column: Column | undefined, zeroIsBlank: boolean): boolean => {
  const cell = row.cell(column);
  return isBlank(cell) || (cell === 0 && zeroIsBlank);
};

const bearingIn = (
  row: TableRow,
  column: Column | undefined,
  zeroIsBlank: boolean,
): number | null =>
  saysNothing(row, column, zeroIsBlank)
    ? null
    : parseDirection(row.cell(column), `Row ${row.row}: bearing`);

/** The hole's own headwind, or what the wind of the settings comes to along and across it. */
function windAt(
  row: TableRow,
  column: Column | undefined,
  bearingDegrees: number | null,
  { windMps, windFromDegrees }: Settings,
  zeroIsBlank: boolean,
): Pick<Hole, "headwindMps" | "crosswindMps"> {
  if (
    !saysNothing(row, column, zeroIsBlank) ||
    bearingDegrees === null ||
    windFromDegrees === null
  ) {
    return { headwindMps: row.mps(column, "headwind"), crosswindMps: 0 };
  }
  return {
    headwindMps: headwindMps(windMps, windFromDegrees, bearingDegrees),
    crosswindMps: crosswindMps(windMps, windFromDegrees, bearingDegrees),
  };
}
