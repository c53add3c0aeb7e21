/**
 * A card read back from cells: the exact inverse of `printedCard` for a card that we printed, and the
 * best that can be said of one made by hand, of which only Disc and Carry must be there.
 */
import { PRIOR_FREEDOM } from "../constants";
import { isBlank } from "../log/cell";
import { cellAt, dateIn, numberIn, textIn } from "../log/cellParts";
import { metresPer } from "../log/columnUnits";
import { discKey } from "../log/discKey";
import { discType, softestPower } from "../log/discTypes";
import { findColumns, type Column } from "../log/headings";
import { carryFault } from "../log/throwFault";
import { messages } from "../messages";
import type { Card, CardRow, Cell, Cells, LeftOut, Settings, Verdict } from "../types";
import { CARD_FIELDS } from "./cardColumns";
import { nextThrow } from "./carryFigures";
import { sideFromFigures } from "./sideFigures";

type Columns = Partial<Record<keyof typeof CARD_FIELDS, Column>>;

const VERDICTS: readonly Verdict[] = ["changing", "steady", "too few"];

/**
 * Reads a card with its header row, figures in the distance unit of the settings or of the header. A
 * row whose name or carry makes no sense, or whose disc is on the card already, is left out with a
 * sentence; any other figure that is not a number counts as not given. Blank rows are passed over.
 */
export function readCardCells(cells: Cells, settings: Settings): Card {
  const columns = findColumns(cells[0] ?? [], CARD_FIELDS);
  const perCarry = metresPer(columns.carry, settings.distanceUnit);
  const rows = new Map<string, CardRow>();
  const leftOut: LeftOut[] = [];
  for (let index = 1; index < cells.length; index++) {
    const row = index + 1;
    const discCell = cellAt(cells[index]!, columns.disc?.index ?? -1);
    const carryCell = cellAt(cells[index]!, columns.carry?.index ?? -1);
    const disc = textIn(discCell);
    if (disc === "" && (isBlank(carryCell) || carryCell === 0)) continue;
    const key = discKey(disc);
    const reason = rows.has(key)
      ? messages.carry.onCardTwice(row, disc)
      : carryFault(discCell, carryCell, row, perCarry);
    if (reason !== null) leftOut.push({ row, disc, reason });
    else rows.set(key, cardRow(cells[index]!, disc, columns, settings));
  }
  const sorted = [...rows.values()].sort((one, other) => other.mu - one.mu);
  return { rows: sorted, population: population(sorted, settings.usualSpread), leftOut };
}

function cardRow(
  cells: readonly Cell[],
  disc: string,
  columns: Columns,
  settings: Settings,
): CardRow {
  const text = (column?: Column): string => textIn(cellAt(cells, column?.index ?? -1));
  const number = (column?: Column): number => numberIn(cellAt(cells, column?.index ?? -1), NaN);
  const metres = (column?: Column): number =>
    number(column) * metresPer(column, settings.distanceUnit);
  const carry = metres(columns.carry);
  const throws = number(columns.throws);
  const trend = discKey(text(columns.trend));
  const type = discType(text(columns.type));
  const softest = number(columns.softest);
  return {
    disc: disc.replace(/\s+/g, " "),
    type,
    line: text(columns.line),
    softest: softestPower(type, softest > 0 && softest <= 1 ? softest : null),
    inBag: true,
    ...nextThrow(
      {
        carry,
        low: metres(columns.low),
        high: metres(columns.high),
        spread: metres(columns.spread),
        knownTo: metres(columns.knownTo),
        throws,
      },
      settings.usualSpread,
    ),
    side: sideFromFigures(
      {
        carry,
        side: metres(columns.side),
        aim: metres(columns.aim),
        throws: number(columns.sideThrows),
      },
      settings.sideSpreadRad,
    ),
    throws: throws > 0 ? throws : 1,
    leftOut: number(columns.leftOut) || 0,
    lastDay: dateIn(cellAt(cells, columns.last?.index ?? -1)) || null,
    verdict: VERDICTS.find((verdict) => verdict === trend) ?? "too few",
  };
}

/**
 * The spread of the population is not printed. Its freedom d0 is what is left of a row's freedom when
 * its own throws are taken away, best seen where there are fewest. Its variance is pooled from the
 * rows and the usual spread, (d0·usual² + Σν·s²)/(d0 + Σν): what the card started from where the bag
 * was too small to tell a prior itself, and close to it elsewhere.
 */
function population(rows: readonly CardRow[], usualSpread: number): Card["population"] {
  const least = rows.reduce<CardRow | null>(
    (fewest, row) => (fewest && fewest.freedom <= row.freedom ? fewest : row),
    null,
  );
  const freedom = least ? Math.max(1, least.freedom - least.evidence + 1) : PRIOR_FREEDOM;
  const pooled = rows.reduce((sum, row) => sum + row.freedom * row.scale ** 2, 0);
  const weight = rows.reduce((sum, row) => sum + row.freedom, 0);
  const variance = (freedom * usualSpread ** 2 + pooled) / (freedom + weight);
  return { scale: Math.sqrt(variance), freedom };
}
