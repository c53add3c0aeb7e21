/** The throw log: cells in, throws and left-out rows out. */
import { LONGEST_CARRY_M } from "../constants";
import { type DomainError, unusable } from "../errors";
import { messages } from "../messages";
import type { Cell, Cells, LeftOut, Settings, Throw, ThrowLog } from "../types";
import {
  blanksAreZero,
  cellAt,
  dateIn,
  describeCell,
  ErrorCell,
  isBlank,
  isCarry,
  isPower,
  numberIn,
  plainCell,
  type PlainCell,
  textIn,
  wrongCell,
} from "./cell";
import { type Column, findColumns, metresPer, mpsPer } from "./headings";
import { discKeys, isOff } from "./names";

// The columns of a throw log and of a printed card, and which of the two a range is.

export const THROW_HEADERS = {
  date: ["date", "day"],
  disc: ["disc", "disc name", "discs"],
  carry: ["carry", "distance", "dist"],
  offline: ["offline", "off line", "off-line", "sideways"],
  power: ["power"],
  line: ["line"],
  headwind: ["headwind", "head wind", "wind"],
  rise: ["rise", "elevation"],
  player: ["player", "thrower"],
  note: ["note", "notes", "comment"],
} as const;

export type ThrowField = keyof typeof THROW_HEADERS;
type Found = Partial<Record<ThrowField, Column>>;

/** Headers that only a card has. */
const CARD_ONLY = { figure: ["low", "high", "spread", "known to"] } as const;

/** Where everything is; an index of −1 reads as blank. */
export interface ThrowLayout {
  /** Index of the first row under the header. */
  readonly firstRow: number;
  readonly at: Readonly<Record<ThrowField, number>>;
  readonly metresPerCarry: number;
  readonly metresPerOffline: number;
  readonly metresPerRise: number;
  readonly mpsPerHeadwind: number;
  /** Whether this host sends a blank cell as the number 0. */
  readonly blankIsZero: boolean;
}

/** What a `throws` range is: a log or card with headers, a bare list of disc and carry, or blank. */
export type ThrowsShape = "log" | "card" | "list" | "blank";

export function throwsShape(cells: Cells): ThrowsShape {
  const first = cells.find((row) => row.some((cell) => !isBlank(plainCell(cell))));
  if (!first) return "blank";
  // No header is a number, so this is a throw even of a disc called "Disc 1".
  if (isName(first[0]) && typeof plainCell(first[1]) === "number") return "list";
  const header = cells[0] ?? [];
  const found = findColumns(header, THROW_HEADERS);
  if (found.disc && found.carry) return findColumns(header, CARD_ONLY).figure ? "card" : "log";
  throw unusable(messages.log.noColumn(found.disc ? "Carry" : "Disc", "The throw log"));
}

const isName = (cell: Cell): boolean => {
  const plain = plainCell(cell);
  return typeof plain === "string" && !isBlank(plain);
};

/** The layout of a log or a bare list. A unit in a header ("Carry (m)") goes before the setting. */
export function throwLayout(cells: Cells, shape: "log" | "list", settings: Settings): ThrowLayout {
  const found: Found =
    shape === "list"
      ? { disc: { index: 0, unit: "" }, carry: { index: 1, unit: "" } }
      : findColumns(cells[0]!, THROW_HEADERS);
  const at = Object.fromEntries(
    Object.keys(THROW_HEADERS).map((field) => [field, found[field as ThrowField]?.index ?? -1]),
  ) as Record<ThrowField, number>;
  return {
    firstRow: shape === "list" ? 0 : 1,
    at,
    metresPerCarry: metresPer(found.carry, settings.distanceUnit),
    metresPerOffline: metresPer(found.offline, settings.distanceUnit),
    metresPerRise: metresPer(found.rise, settings.distanceUnit),
    mpsPerHeadwind: mpsPer(found.headwind, settings.windUnit),
    blankIsZero: blanksAreZero(cells, [at.disc, at.line, at.player, at.note]),
  };
}

// Why a row of a log or card cannot count, in a sentence that says where and what to do.

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

// One row of the throw log.

/** Whose throws are read: those of the player of the settings, or everybody's in one, each under their name. */
export type Whose = "player" | "everyone";

/** Whose throws count, and how names are compared. */
export interface ThrowReader {
  /** null: everybody's. */
  readonly playerKey: string | null;
  readonly keyOf: (name: string) => string;
}

/**
 * Reads one row: the throw, or why the row does not count, or null where it says nothing. `row` is its number for sentences. Blank power is a smooth throw; blank rise and headwind
 * are 0; a blank offline was not noted; a blank player is the chosen one. Nothing is guessed from text, save a date in ISO 8601.
 */
export function throwRow(
  cells: readonly Cell[],
  row: number,
  layout: ThrowLayout,
  { playerKey, keyOf }: ThrowReader,
): Throw | LeftOut | null {
  const { at } = layout;
  const disc = textIn(cellAt(cells, at.disc));
  if (disc === "" && saysNothing(cells, layout)) return null;
  const playerCell = cellAt(cells, at.player);
  const player = textIn(playerCell);
  if (playerKey !== null && player !== "" && keyOf(player) !== playerKey)
    return { row, disc, reason: messages.log.otherPlayer(row, player), otherPlayer: player };
  const lineCell = cellAt(cells, at.line);
  const line = textIn(lineCell);
  if (isOff(keyOf(line))) return { row, disc, reason: messages.log.markedOff(row) };

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
    if (fault !== null) return { row, disc, reason: fault };
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

/** Where the rows of a log go, one by one. */
export interface ThrowTaker {
  take(thrown: Throw): void;
  leave(row: LeftOut): void;
}

/**
 * Reads a throw log with its header row (columns in any order, in any case, by listed aliases;
 * unknown ones are ignored) or a bare list of disc and carry without one. Distances and wind are in
 * the units of the settings, or in the one that a header names ("Carry (m)"). A row that cannot
 * count is left out with a sentence and never spoils the rest; blank rows are passed over; a blank
 * range is an empty log. Throws an `unusable` error where there is no Disc or Carry column, for a
 * card, which no longer holds single throws, and where throws that count are of more than one named
 * player and the settings choose none: in one they would describe nobody. One pass, linear in rows.
 *
 * @example
 * readThrows([["Disc", "Carry"], ["Copper mid", 301]], DEFAULT_SETTINGS).throws.length // 1
 */
export function readThrows(cells: Cells, settings: Settings, whose: Whose = "player"): ThrowLog {
  const throws: Throw[] = [];
  const leftOut: LeftOut[] = [];
  const taker: ThrowTaker = {
    take: (thrown) => throws.push(thrown),
    leave: (row) => leftOut.push(row),
  };
  passThrows(cells, settings, taker, whose);
  return { throws, leftOut };
}

/** What `readThrows` reads, passed on row by row instead of kept. */
export function passThrows(
  cells: Cells,
  settings: Settings,
  taker: ThrowTaker,
  whose: Whose = "player",
): void {
  const shape = throwsShape(cells);
  if (shape === "card") throw unusable(messages.log.cardForLog());
  if (shape === "blank") return;
  const layout = throwLayout(cells, shape, settings);
  const keyOf = discKeys();
  const chosen = whose === "everyone" ? null : settings.player;
  const reader = { playerKey: chosen === null ? null : keyOf(chosen), keyOf };
  const players = whose === "player" && chosen === null ? new Map<string, string>() : null;
  for (let index = layout.firstRow; index < cells.length; index++) {
    const read = throwRow(cells[index]!, index + 1, layout, reader);
    if (read === null) continue;
    if ("reason" in read) {
      taker.leave(read);
      continue;
    }
    taker.take(read);
    const key = players && keyOf(read.player);
    if (!key || players.has(key)) continue;
    if (players.size === MOST_NAMED) throw severalPlayers(players, true);
    players.set(key, read.player);
  }
  if (players && players.size > 1) throw severalPlayers(players, false);
}

/** More names than this do not help to choose one. */
const MOST_NAMED = 5;

const severalPlayers = (players: ReadonlyMap<string, string>, others: boolean): DomainError =>
  unusable(messages.log.severalPlayers([...players.values()], others));
