/** The tables of what happened on the course: throws and where they finished, putts made and tried. */
import { LONGEST_CARRY_M } from "../constants";
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cells, PuttRow, RoundRow, Settings } from "../types";
import { blanksAreZero, dateIn, describeCell, isBlank } from "./cell";
import { type Column, findColumns } from "./headings";
import { discKey } from "./names";
import { TableRow } from "./tableRow";

const ROUND_HEADERS = {
  date: ["date", "day"],
  course: ["course"],
  hole: ["hole", "no", "tee"],
  distance: ["distance", "length"],
  rise: ["rise", "elevation"],
  headwind: ["headwind", "head wind", "wind"],
  disc: ["disc", "disc name", "discs"],
  power: ["power"],
  finish: ["finish", "long/short"],
  offline: ["offline", "off line", "off-line", "sideways"],
  inCircle: ["in circle", "in the circle"],
  note: ["note", "notes", "comment"],
} as const;

const PUTT_HEADERS = {
  date: ["date", "day"],
  distance: ["distance"],
  made: ["made"],
  tried: ["tried", "putts", "attempts"],
  note: ["note", "notes", "comment"],
} as const;

type RoundColumns = Partial<Record<keyof typeof ROUND_HEADERS, Column>>;

const YES: ReadonlySet<string> = new Set(["yes", "y", "in", "true"]);
const NO: ReadonlySet<string> = new Set(["no", "n", "out", "false"]);

/** Finish and offline are paced or guessed: nearer to the edge than this they contradict nobody, m. */
const AT_THE_EDGE_M = 1.5;

/**
 * Reads results with their header row. Distance, Disc and at least one of Finish (long +, short −),
 * Offline (right +) and In circle (yes, no) must be there.
 *
 * @param settings Units of distances and wind, where the header names none, and the circle.
 * @returns One record a row. A row without disc, distance or any result is not filled in yet and
 * left out. Blank power is smooth; blank rise and headwind are 0. A finish or offline of 0 is
 * a result, unless this host sends blanks as 0.
 * @throws `unusable`, naming the row, for a cell that should be a number, date, yes or no and is not,
 * for a finish that no throw makes, and where In circle contradicts finish and offline.
 * @example
 * readRounds([["Disc", "Distance", "Finish"], ["Copper mid", 300, -12]], settings)[0]?.finishM // −3.6576
 */
export function readRounds(cells: Cells, settings: Settings): RoundRow[] {
  const columns = findColumns(cells[0] ?? [], ROUND_HEADERS);
  for (const [field, header] of ROUND_NEEDS) {
    if (!columns[field]) throw unusable(messages.log.noColumn(header, "The rounds table"));
  }
  if (!columns.finish && !columns.offline && !columns.inCircle)
    throw unusable(messages.log.noColumn("Finish", "The rounds table"));
  const zeroIsBlank = blanksAreZero(
    cells,
    [columns.disc, columns.note, columns.course].map((column) => column?.index ?? -1),
  );
  const rounds: RoundRow[] = [];
  for (let index = 1; index < cells.length; index++) {
    const row = new TableRow(cells[index]!, index + 1, settings);
    const round = roundOf(row, columns, settings, zeroIsBlank);
    if (round) rounds.push(round);
  }
  return rounds;
}

const ROUND_NEEDS = [
  ["disc", "Disc"],
  ["distance", "Distance"],
] as const;

function roundOf(
  row: TableRow,
  columns: RoundColumns,
  { circleM }: Settings,
  zeroIsBlank: boolean,
): RoundRow | null {
  const disc = row.text(columns.disc);
  const distanceM = row.metresAway(columns.distance, "distance");
  const finishM = missM(row, columns.finish, "finish", zeroIsBlank);
  const offlineM = missM(row, columns.offline, "offline", zeroIsBlank);
  const inCircle = yesOrNo(row, columns.inCircle, "in circle");
  const noResult = finishM === null && offlineM === null && inCircle === null;
  if (disc === "" || distanceM === 0 || noResult) return null;
  if (finishM !== null && finishM <= -distanceM)
    throw unusable(messages.log.finishBehind(row.row, row.number(columns.finish, "finish")));
  if (inCircle !== null && missContradicts(inCircle, finishM, offlineM, circleM))
    throw unusable(messages.log.circleContradicted(row.row, inCircle ? "yes" : "no"));
  return {
    row: row.row,
    day: dayIn(row, columns.date),
    course: row.text(columns.course),
    hole: row.text(columns.hole),
    disc,
    power: row.power(columns.power),
    distanceM,
    riseM: row.metres(columns.rise, "rise"),
    headwindMps: row.mps(columns.headwind, "headwind"),
    finishM,
    offlineM,
    inCircle,
  };
}

/** Whether finish and offline, in m and null where not noted, cannot belong to a throw in or out of the circle. */
export function missContradicts(
  inCircle: boolean,
  finishM: number | null,
  offlineM: number | null,
  circleM: number,
): boolean {
  const nearestM = Math.hypot(finishM ?? 0, offlineM ?? 0);
  if (inCircle) return nearestM > circleM + AT_THE_EDGE_M;
  return finishM !== null && offlineM !== null && nearestM < circleM - AT_THE_EDGE_M;
}

/** How far from the target, no farther than any throw carries; null where it was not noted. */
function missM(
  row: TableRow,
  column: Column | undefined,
  what: string,
  zeroIsBlank: boolean,
): number | null {
  const cell = row.cell(column);
  if (isBlank(cell) || (cell === 0 && zeroIsBlank)) return null;
  const metres = row.metres(column, what);
  if (Math.abs(metres) > LONGEST_CARRY_M)
    throw unusable(messages.log.tooFarOff(row.row, what, row.number(column, what)));
  return metres;
}

/** A word or a tick box; null for a blank, and for a 0, which some hosts send for one. */
function yesOrNo(row: TableRow, column: Column | undefined, what: string): boolean | null {
  const cell = row.cell(column);
  if (isBlank(cell) || cell === 0) return null;
  if (typeof cell === "boolean") return cell;
  const word = typeof cell === "string" ? discKey(cell) : "";
  if (YES.has(word) || NO.has(word)) return YES.has(word);
  throw unusable(messages.log.notYesOrNo(row.row, what, describeCell(cell)));
}

function dayIn(row: TableRow, column: Column | undefined): number | null {
  const day = dateIn(row.cell(column));
  if (Number.isNaN(day))
    throw unusable(messages.log.notDate(row.row, describeCell(row.cell(column))));
  return day || null;
}

/**
 * Reads putts with their header row; Distance, Made and Tried must be there. One row may hold one putt
 * (made 1 of 1, or 0 of 1) or many.
 *
 * @returns One record a row; a row without distance or tries is not filled in yet and left out, and a
 * blank in Made is 0.
 * @throws `unusable`, naming the row, for a cell that is no number, a count that is not whole or below
 * 0, and more made than tried.
 * @example
 * readPutts([["Distance", "Made", "Tried"], [20, 14, 20]], settings)[0]?.made // 14
 */
export function readPutts(cells: Cells, settings: Settings): PuttRow[] {
  const columns = findColumns(cells[0] ?? [], PUTT_HEADERS);
  for (const [field, header] of PUTT_NEEDS) {
    if (!columns[field]) throw unusable(messages.log.noColumn(header, "The table of putts"));
  }
  const putts: PuttRow[] = [];
  for (let index = 1; index < cells.length; index++) {
    const row = new TableRow(cells[index]!, index + 1, settings);
    const distanceM = row.metresAway(columns.distance, "distance");
    const tried = countIn(row, columns.tried, "tried");
    const made = countIn(row, columns.made, "made");
    if (distanceM === 0 || (tried === 0 && made === 0)) continue;
    if (made > tried) throw unusable(messages.log.moreMadeThanTried(row.row, made, tried));
    putts.push({ row: row.row, day: dayIn(row, columns.date), distanceM, made, tried });
  }
  return putts;
}

const PUTT_NEEDS = [
  ["distance", "Distance"],
  ["made", "Made"],
  ["tried", "Tried"],
] as const;

function countIn(row: TableRow, column: Column | undefined, what: string): number {
  const count = row.number(column, what);
  if (!Number.isInteger(count) || count < 0)
    throw unusable(messages.log.notCount(row.row, what, count));
  return count;
}
