/** The columns of a throw log and of a printed card, and which of the two a range is. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cell, Cells, Settings } from "../types";
import { toMetres, toMps } from "../units";
import { isBlank, plainCell } from "./cell";
import { findColumns, type Column } from "./headings";
import { DISTANCE_WORDS, WIND_WORDS } from "./unitWords";

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
  const header = cells[0] ?? [];
  const found = findColumns(header, THROW_HEADERS);
  if (found.disc && found.carry) return findColumns(header, CARD_ONLY).figure ? "card" : "log";
  const first = cells.find((row) => row.some((cell) => !isBlank(plainCell(cell))));
  if (!first) return "blank";
  const bare =
    !found.disc && !found.carry && isName(first[0]) && typeof plainCell(first[1]) === "number";
  if (bare) return "list";
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
  const metresPer = (field: ThrowField): number =>
    toMetres(1, DISTANCE_WORDS.get(found[field]?.unit ?? "") ?? settings.distanceUnit);
  return {
    firstRow: shape === "list" ? 0 : 1,
    at,
    metresPerCarry: metresPer("carry"),
    metresPerOffline: metresPer("offline"),
    metresPerRise: metresPer("rise"),
    mpsPerHeadwind: toMps(1, WIND_WORDS.get(found.headwind?.unit ?? "") ?? settings.windUnit),
    blankIsZero: holdsZeroAsText(cells, [at.disc, at.line, at.player, at.note]),
  };
}

/**
 * A number 0 where only text belongs shows a host that sends blank cells as 0. There, an offline
 * of 0 cannot be told from one that was not noted.
 */
const holdsZeroAsText = (cells: Cells, columns: readonly number[]): boolean =>
  cells.some((row) => columns.some((column) => row[column] === 0));
