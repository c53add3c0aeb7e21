/** One row of the throw log. */
import { messages } from "../messages";
import type { Cell, Throw } from "../types";
import { isBlank } from "./cell";
import { cellAt, dateIn, numberIn, textIn } from "./cellParts";
import { isOff } from "./offLine";
import { isCarry, isPower } from "./soundFigures";
import type { ThrowLayout } from "./throwColumns";
import { throwFault } from "./throwFault";

/** Whose throws count, and how names are compared. */
export interface ThrowReader {
  /** null: everybody's. */
  readonly playerKey: string | null;
  readonly keyOf: (name: string) => string;
}

/**
 * Reads one row: the throw, or in a sentence why the row does not count, or null where it says
 * nothing. `row` is its number for sentences. Blank power is a smooth throw; blank rise and headwind
 * are 0; a blank offline was not noted; a blank player is the chosen one. Nothing is guessed from text, save a date in ISO 8601.
 */
export function throwRow(
  cells: readonly Cell[],
  row: number,
  layout: ThrowLayout,
  { playerKey, keyOf }: ThrowReader,
): Throw | string | null {
  const { at } = layout;
  const disc = textIn(cellAt(cells, at.disc));
  if (disc === "" && saysNothing(cells, layout)) return null;
  const lineCell = cellAt(cells, at.line);
  const line = textIn(lineCell);
  if (isOff(keyOf(line))) return messages.log.markedOff(row);
  const playerCell = cellAt(cells, at.player);
  const player = textIn(playerCell);
  if (playerKey !== null && player !== "" && keyOf(player) !== playerKey)
    return messages.log.otherPlayer(row, player);

  const carryM = numberIn(cellAt(cells, at.carry), NaN) * layout.metresPerCarry;
  const offlineCell = cellAt(cells, at.offline);
  const offline = numberIn(offlineCell, 0);
  const power = numberIn(cellAt(cells, at.power), 1);
  const headwind = numberIn(cellAt(cells, at.headwind), 0);
  const rise = numberIn(cellAt(cells, at.rise), 0);
  const day = dateIn(cellAt(cells, at.date));

  // Looking for faults costs more than reading; most rows are plainly sound.
  const textsSound = disc !== "" && typeof lineCell !== "object" && typeof playerCell !== "object";
  const figuresSound = isCarry(carryM) && isPower(power);
  if (!(textsSound && figuresSound) || Number.isNaN(offline + headwind + rise + day)) {
    const fault = throwFault(cells, row, layout, playerKey !== null);
    if (fault !== null) return fault;
  }

  const noOffline = isBlank(offlineCell) || (offlineCell === 0 && layout.blankIsZero);
  return {
    row,
    disc,
    carryM,
    offlineM: noOffline ? null : offline * layout.metresPerOffline,
    power: power === 0 ? 1 : power,
    line,
    headwindMps: headwind * layout.mpsPerHeadwind,
    riseM: rise * layout.metresPerRise,
    player,
    day: day === 0 ? null : day,
    note: textIn(cellAt(cells, at.note)),
  };
}

/** Whether every column of the log is blank, or 0 as some hosts send a blank. */
function saysNothing(cells: readonly Cell[], { at }: ThrowLayout): boolean {
  return Object.values(at).every((index) => {
    const cell = cellAt(cells, index);
    return cell === 0 || isBlank(cell);
  });
}
