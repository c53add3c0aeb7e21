/** The course table: one hole a row. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cells, Hole, Settings } from "../types";
import { findColumns } from "./headings";
import { TableRow } from "./tableRow";

const COURSE_HEADERS = {
  hole: ["hole", "no", "tee"],
  par: ["par"],
  distance: ["distance", "length"],
  rise: ["rise", "elevation"],
  headwind: ["headwind", "head wind", "wind"],
  longTrouble: ["long trouble", "trouble long", "trouble behind"],
  shortTrouble: ["short trouble", "trouble short", "trouble in front"],
  line: ["line"],
  note: ["note", "notes", "comment"],
} as const;

/**
 * Reads a course with its header row; only Distance must be there. A row without a distance is not
 * filled in yet and passed over; a hole without a name is named by its place. Blank or 0: no rise, no
 * wind, no trouble, par not known. Distances and wind in the units of the settings or of the header. A cell
 * that should be a number and is not, or a distance below 0, throws an `unusable` error that names
 * the row: a plan with a hole missing would mislead.
 *
 * @example
 * readCourse([["Hole", "Distance"], [1, 300]], DEFAULT_SETTINGS)[0]?.distanceM // 91.44
 */
export function readCourse(cells: Cells, settings: Settings): Hole[] {
  const columns = findColumns(cells[0] ?? [], COURSE_HEADERS);
  if (!columns.distance) throw unusable(messages.log.noColumn("Distance", "The course"));
  const holes: Hole[] = [];
  for (let index = 1; index < cells.length; index++) {
    const row = new TableRow(cells[index]!, index + 1, settings);
    const distanceM = row.metresAway(columns.distance, "distance");
    if (distanceM === 0) continue;
    holes.push({
      row: row.row,
      hole: row.text(columns.hole) || `${holes.length + 1}`,
      par: row.number(columns.par, "par") || null,
      distanceM,
      riseM: row.metres(columns.rise, "rise"),
      headwindMps: row.mps(columns.headwind, "headwind"),
      longTroubleM: row.metresAway(columns.longTrouble, "long trouble") || null,
      shortTroubleM: row.metresAway(columns.shortTrouble, "short trouble") || null,
      line: row.text(columns.line),
      note: row.text(columns.note),
    });
  }
  return holes;
}
