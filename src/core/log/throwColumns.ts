/** The columns of a throw log and of a printed card, and which of the two a range is. */
import { unusable } from "../errors";
import { messages } from "../messages";
import type { Cell, Cells, Settings } from "../types";
import { blanksAreZero } from "./blanksAreZero";
import { isBlank, plainCell } from "./cell";
import { findColumns, type Column } from "./headings";
import { metresPer, mpsPer } from "./columnUnits";

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
