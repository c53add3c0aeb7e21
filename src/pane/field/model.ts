/** How well each disc is known, and which is most worth throwing next. */
import { levelling } from "../../core/carry/levelThrows";
import { knownToM, neededThrows } from "../../core/carry/needed";
import { nextCarry, type NextCarry } from "../../core/carry/student";
import { LONGEST_CARRY_M } from "../../core/constants";
import { dayFromIso, isCarry } from "../../core/log/cell";
import { discKey, discKeys, isOff, OFF } from "../../core/log/names";
import { throwLayout } from "../../core/log/readThrows";
import type { Settings, Throw } from "../../core/types";
import { type DistanceUnit, toMetres, toMps } from "../../core/units";
import type { CellValue, Row, RowAt, TableData } from "../../workbook/port";
import { type Book, oncePer, rowIn } from "../book/book";
import { headersOf, type NewThrow, usualCarryIfUnlikely } from "../book/newThrows";
import { attempt } from "../controller";
import { distance, needNumber } from "../words/figures";

// Where the throws of one disc stand on its dot plot.

export interface Dot {
  readonly thrown: Throw;
  /** Level, calm, smooth carry. */
  readonly carryM: number;
}

const levellingOf = oncePer((book: Book) => levelling(book.settings));

const throwsByDisc = oncePer(({ log }: Book): ReadonlyMap<string, readonly Throw[]> => {
  const keyOf = discKeys();
  const groups = new Map<string, Throw[]>();
  for (const thrown of log.throws) {
    const key = keyOf(thrown.disc);
    const group = groups.get(key);
    if (group) group.push(thrown);
    else groups.set(key, [thrown]);
  }
  return groups;
});

/** More dots than this are a blur, and slow to draw. */
const MOST_DOTS = 100;

/** The latest counted throws of a disc, brought to level and calm, in the order of the log. */
export function dotsOf(book: Book, disc: string): Dot[] {
  const throws = throwsByDisc(book).get(discKey(disc)) ?? [];
  const type = rowIn(book, disc)?.type ?? null;
  return throws.slice(-MOST_DOTS).flatMap((thrown) => {
    const carry = attempt(() => levellingOf(book)(thrown, type));
    return carry.ok ? [{ thrown, carryM: carry.value }] : [];
  });
}

export const intervalOf = (book: Book, disc: string): NextCarry | null => {
  const row = rowIn(book, disc);
  return row && nextCarry(row);
};

/**
 * Heights of dots so that none hides another: each goes to the lowest level where its neighbours
 * leave room. Answers the level of each, 0 the lowest.
 */
export function stacked(xs: readonly number[], size: number): number[] {
  const order = xs.map((_, at) => at).sort((a, b) => xs[a]! - xs[b]!);
  const lastAt: number[] = [];
  const levels = xs.map(() => 0);
  for (const at of order) {
    const free = lastAt.findIndex((x) => xs[at]! - x >= size);
    const level = free >= 0 ? free : lastAt.length;
    lastAt[level] = xs[at]!;
    levels[at] = level;
  }
  return levels;
}

// A session through the bag, as plain state. What was thrown stands in the log, not here.

export type Order = "worth" | "listed";

export interface Session {
  readonly day: number;
  /** Felt by every throw of the session. */
  readonly headwindMps: number;
  readonly riseM: number;
  readonly order: Order;
  /** How closely each disc is to be known. */
  readonly marginM: number;
  /** The disc that the player chose instead of the next in order; null for the next. */
  readonly chosen: string | null;
  /** Discs passed over in this round through the bag. */
  readonly skipped: readonly string[];
  /** What stands in the box. */
  readonly carry: string;
  /** Disc and carry that looked like a slip: adding the same again means that they were none. */
  readonly doubted: string | null;
  /** Sideways miss in steps of the arrow keys, right positive; null where it was not noted. */
  readonly offline: number | null;
}

/** The throws of the session: those of its day, by this player, in the order of the log. */
export const throwsOf = (session: Session, { log }: Book): readonly Throw[] =>
  log.throws.filter(({ day }) => day === session.day);

/** Discs to throw: those of the bag, or where no bag is listed those that the log knows. */
export const bagOf = ({ bag, card }: Book): readonly string[] =>
  bag.length > 0
    ? bag.filter(({ inBag }) => inBag).map(({ disc }) => disc)
    : card.rows.map(({ disc }) => disc);

export interface Progress {
  /** Discs with a throw in this round through the bag, and discs in the bag. */
  readonly thrown: number;
  readonly discs: number;
  /** Which time through the bag, from 1. */
  readonly round: number;
  /** The disc to throw now; null where there is none. */
  readonly disc: string | null;
  /** Those that follow it in order. */
  readonly after: readonly string[];
}

/**
 * Where the session stands. Every disc of the bag is thrown once before any is thrown again; those
 * still to come stand in the order of `rank` (least first), ties as listed.
 */
export function progressOf(session: Session, book: Book, rank: (disc: string) => number): Progress {
  const discs = bagOf(book);
  const times = countByDisc(throwsOf(session, book));
  const timesOf = (disc: string): number => times.get(discKey(disc)) ?? 0;
  const round = discs.length === 0 ? 0 : Math.min(...discs.map(timesOf));
  const inRound = discs.filter((disc) => timesOf(disc) === round);
  const skipped = new Set(session.skipped.map(discKey));
  const left = inRound.filter((disc) => !skipped.has(discKey(disc)));
  const queue = [...(left.length > 0 ? left : inRound)];
  if (session.order === "worth") queue.sort((a, b) => rank(a) - rank(b));
  const disc = session.chosen ?? queue[0] ?? null;
  return {
    thrown: discs.length - inRound.length,
    discs: discs.length,
    round: round + 1,
    disc,
    after: queue.filter((other) => other !== disc),
  };
}

function countByDisc(throws: readonly Throw[]): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const { disc } of throws) {
    const key = discKey(disc);
    counts.set(key, (counts.get(key) ?? 0) + 1);
  }
  return counts;
}

// One throw of the session, from the box to the log, and what may be done about the last one.

/** One press of an arrow key, in the distance unit. */
export const OFFLINE_STEP: Readonly<Record<DistanceUnit, number>> = { ft: 5, m: 1 };

/** The throw in the box; what is missing or unclear is thrown as a sentence. */
export function entryOf(session: Session, disc: string, settings: Settings): NewThrow {
  const { distanceUnit } = settings;
  const carry = needNumber(session.carry, "Carry");
  if (carry <= 0) throw new Error("Carry must be above 0.");
  const carryM = toMetres(carry, distanceUnit);
  if (!isCarry(carryM)) {
    const than = carryM > LONGEST_CARRY_M ? "farther" : "shorter";
    throw new Error(`${carry} ${distanceUnit} is ${than} than any throw. Look at the number.`);
  }
  const offline = session.offline;
  return {
    disc,
    carryM,
    offlineM:
      offline === null ? null : toMetres(offline * OFFLINE_STEP[distanceUnit], distanceUnit),
    power: 1,
    line: "",
    headwindMps: session.headwindMps,
    riseM: session.riseM,
    player: settings.player ?? "",
    day: session.day,
    note: "",
  };
}

/** A row of the log as it stands: its number for the core, its cells, and whether it is marked off. */
export interface LoggedRow extends RowAt {
  readonly disc: string;
  readonly carry: CellValue;
  readonly off: boolean;
}

/** Rows of the session's day and player, marked off or not, in the order of the log. */
export function loggedRows(session: Session, { raw, settings }: Book): LoggedRow[] {
  const table = raw.throws;
  if (!table) return [];
  const { at } = throwLayout([table.headers], "log", settings);
  const player = settings.player === null ? null : discKey(settings.player);
  const keyIn = (row: readonly CellValue[], column: number): string =>
    discKey(String(row[column] ?? ""));
  const isMine = (row: readonly CellValue[]): boolean =>
    player === null || ["", player].includes(keyIn(row, at.player));
  return table.rows.flatMap((row, index) => {
    if (row[at.date] !== session.day || !isMine(row)) return [];
    const disc = String(row[at.disc] ?? "");
    const off = isOff(keyIn(row, at.line));
    return [{ index, was: rowAsRead(table, row), disc, carry: row[at.carry] ?? "", off }];
  });
}

/** The change that marks a row off, and what it takes to take that back. */
export function markingOff(
  row: LoggedRow,
  table: TableData,
  settings: Settings,
): { readonly becomes: Row; readonly before: Row; readonly was: Row } {
  const { line } = headersOf(table, settings);
  return {
    becomes: { [line]: OFF },
    before: { [line]: row.was[line] ?? "" },
    was: { ...row.was, [line]: OFF },
  };
}

const rowAsRead = (table: TableData, row: readonly CellValue[]): Row =>
  Object.fromEntries(table.headers.map((header, at) => [header, row[at] ?? ""]));

/** What a question is about: asked once, it is not asked again. */
export const doubted = (session: Session, disc: string): string => `${disc} ${session.carry}`;

/** Asks whether a carry far from the disc's own is meant; null where it is not far, or was asked. */
export function doubtOf(session: Session, book: Book, disc: string): string | null {
  if (session.doubted === doubted(session, disc)) return null;
  const { distanceUnit } = book.settings;
  const carryM = carryIn(session, book, disc);
  const usualM = carryM === null ? null : usualCarryIfUnlikely(book, disc, carryM);
  if (carryM === null || usualM === null) return null;
  return (
    `${distance(carryM, distanceUnit)} is far from the ${distance(usualM, distanceUnit)} of ${disc}. ` +
    "If it is right, add it again; if another disc flew, choose it below."
  );
}

/** What the box cannot be read as is complained about elsewhere. */
function carryIn(session: Session, { settings }: Book, disc: string): number | null {
  try {
    return entryOf(session, disc, settings).carryM;
  } catch {
    return null;
  }
}

// The boxes from which a session starts.

export interface StartForm {
  /** yyyy-mm-dd; "" for today. */
  readonly day: string;
  readonly headwind: string;
  readonly rise: string;
  readonly order: Order;
  readonly margin: string;
}

export const EMPTY_START: StartForm = {
  day: "",
  headwind: "",
  rise: "",
  order: "worth",
  margin: "",
};

/** Usual margin, in the distance unit: near enough to choose between neighbours in a bag. */
export const usualMargin = ({ distanceUnit }: Settings): string =>
  distanceUnit === "ft" ? "10" : "3";

/** A session out of the boxes; what is unclear is thrown as a sentence. */
export function sessionFrom(form: StartForm, settings: Settings, today: number): Session {
  const { distanceUnit, windUnit } = settings;
  const margin = needNumber(form.margin, "Known to ±", Number(usualMargin(settings)));
  if (margin <= 0) throw new Error("Known to ± must be above 0.");
  return {
    day: dayFromIso(form.day) ?? today,
    headwindMps: toMps(needNumber(form.headwind, "Headwind", 0), windUnit),
    riseM: toMetres(needNumber(form.rise, "Rise", 0), distanceUnit),
    order: form.order,
    marginM: toMetres(margin, distanceUnit),
    chosen: null,
    skipped: [],
    carry: "",
    doubted: null,
    offline: null,
  };
}

/** Least first: a disc never thrown, then the one that one more throw sharpens most. */
export function leastKnownFirst(book: Book): (disc: string) => number {
  return (disc) => {
    const row = rowIn(book, disc);
    return row ? knownToM(row, 1) - knownToM(row) : -Infinity;
  };
}

/** Throws still needed to know the disc to ± the margin; null where that cannot be told yet. */
export function stillNeeded(book: Book, disc: string, marginM: number): number | null {
  const row = rowIn(book, disc);
  const needed = row && attempt(() => neededThrows(row, marginM));
  return needed?.ok ? needed.value : null;
}
