/** Why a row of the throw log cannot count, in a sentence that says where and what to do. */
import { LONGEST_CARRY_M } from "../constants";
import { messages } from "../messages";
import type { Cell } from "../types";
import { describeCell, ErrorCell, isBlank, type PlainCell } from "./cell";
import { cellAt, dateIn, numberIn, textIn } from "./cellParts";
import type { ThrowLayout } from "./throwColumns";

/** Above this, power is a percentage typed as a plain number. */
const MOST_POWER = 1.5;

/** The first fault of a row; null where there is none. An error among the players matters only where one is chosen. */
export function throwFault(
  cells: readonly Cell[],
  row: number,
  { at, metresPerCarry }: ThrowLayout,
  playerMatters: boolean,
): string | null {
  const disc = cellAt(cells, at.disc);
  if (textIn(disc) === "") return wrongCell(row, "disc", disc === 0 ? "" : disc);
  if (isError(cellAt(cells, at.line))) return wrongCell(row, "line", cellAt(cells, at.line));
  if (playerMatters && isError(cellAt(cells, at.player)))
    return wrongCell(row, "player", cellAt(cells, at.player));

  const carryCell = cellAt(cells, at.carry);
  const carry = numberIn(carryCell, NaN);
  if (Number.isNaN(carry)) return wrongCell(row, "carry", carryCell);
  if (carry <= 0) return messages.log.notPositive(row, "carry", carry);
  if (carry * metresPerCarry > LONGEST_CARRY_M) return messages.log.tooLong(row, carry);

  const date = cellAt(cells, at.date);
  if (Number.isNaN(dateIn(date))) return wrongDate(row, date);
  const powerCell = cellAt(cells, at.power);
  const power = numberIn(powerCell, 1);
  if (power < 0 || power > MOST_POWER) return messages.log.badPower(row, power);
  if (Number.isNaN(power)) return wrongCell(row, "power", powerCell);
  return (
    notNumber(row, "offline", cellAt(cells, at.offline)) ??
    notNumber(row, "rise", cellAt(cells, at.rise)) ??
    notNumber(row, "headwind", cellAt(cells, at.headwind))
  );
}

const isError = (cell: PlainCell): boolean => cell instanceof ErrorCell;

const notNumber = (row: number, what: string, cell: PlainCell): string | null =>
  Number.isNaN(numberIn(cell, 0)) ? wrongCell(row, what, cell) : null;

/** A cell that should hold something else, named by what it holds. */
export function wrongCell(row: number, what: string, cell: PlainCell): string {
  if (isBlank(cell)) return messages.log.blank(row, what);
  if (cell instanceof ErrorCell) return messages.log.error(row, what, describeCell(cell));
  return messages.log.notNumber(row, what, describeCell(cell));
}

const wrongDate = (row: number, cell: PlainCell): string =>
  cell instanceof ErrorCell
    ? wrongCell(row, "date", cell)
    : messages.log.notDate(row, describeCell(cell));
