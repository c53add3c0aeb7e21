/** Why a row of a log or card cannot count, in a sentence that says where and what to do. */
import { LONGEST_CARRY_M } from "../constants";
import { messages } from "../messages";
import type { Cell } from "../types";
import { describeCell, ErrorCell, type PlainCell } from "./cell";
import { cellAt, dateIn, numberIn, textIn } from "./cellParts";
import { isCarry, isPower } from "./soundFigures";
import type { ThrowLayout } from "./throwColumns";
import { wrongCell } from "./wrongCell";

/**
 * The first fault of a row of the throw log; null where there is none. An error among the players
 * matters only where one is chosen.
 */
export function throwFault(
  cells: readonly Cell[],
  row: number,
  { at, metresPerCarry }: ThrowLayout,
  playerMatters: boolean,
): string | null {
  const line = cellAt(cells, at.line);
  const player = cellAt(cells, at.player);
  const date = cellAt(cells, at.date);
  if (line instanceof ErrorCell) return wrongCell(row, "line", line);
  if (playerMatters && player instanceof ErrorCell) return wrongCell(row, "player", player);
  if (Number.isNaN(dateIn(date))) return wrongDate(row, date);
  return (
    carryFault(cellAt(cells, at.disc), cellAt(cells, at.carry), row, metresPerCarry) ??
    powerFault(cellAt(cells, at.power), row) ??
    numberFault(cellAt(cells, at.offline), row, "offline") ??
    numberFault(cellAt(cells, at.rise), row, "rise") ??
    numberFault(cellAt(cells, at.headwind), row, "headwind")
  );
}

/** What is wrong with a disc's name or its carry; null where nothing is. */
export function carryFault(
  disc: PlainCell,
  carry: PlainCell,
  row: number,
  metresPerCarry: number,
): string | null {
  if (textIn(disc) === "") return wrongCell(row, "disc", disc === 0 ? "" : disc);
  if (typeof carry !== "number") return wrongCell(row, "carry", carry);
  if (carry <= 0) return messages.log.notPositive(row, "carry", carry);
  const carryM = carry * metresPerCarry;
  if (isCarry(carryM)) return null;
  return carryM > LONGEST_CARRY_M
    ? messages.log.tooLong(row, carry)
    : messages.log.tooShort(row, carry);
}

function powerFault(cell: PlainCell, row: number): string | null {
  const power = numberIn(cell, 1);
  if (Number.isNaN(power)) return wrongCell(row, "power", cell);
  return isPower(power) ? null : messages.log.badPower(row, power);
}

const numberFault = (cell: PlainCell, row: number, what: string): string | null =>
  Number.isNaN(numberIn(cell, 0)) ? wrongCell(row, what, cell) : null;

const wrongDate = (row: number, cell: PlainCell): string =>
  cell instanceof ErrorCell
    ? wrongCell(row, "date", cell)
    : messages.log.notDate(row, describeCell(cell));
