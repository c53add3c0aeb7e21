/**
 * The card as cells. In one column a figure each, in the distance unit of the settings:
 *
 *     Carry    = e^mu
 *     Low/High = Carry · e^∓a,  a = t·scale·√(1 + 1/n)   the next throw, eight times in ten
 *     Spread   = Carry · scale
 *     Known to = Carry · t·scale/√n                      the carry itself, eight times in ten
 *     Side     = Carry · side scale                      the next throw sideways
 *     Aim      = −Carry · tan(bias)                      right positive
 *
 * where n is the evidence and t the 90 % point of Student's t with the freedom of the row. Nothing is
 * rounded, so `readCardCells` gets every number back.
 */
import type { Card, CardRow, Settings } from "../types";
import { fromMetres } from "../units";
import { CARD_HEADERS } from "./cardColumns";
import { knownToM } from "./needed";
import { nextCarry } from "./nextCarry";

/**
 * Header and one row a disc, longest first; discs that stay at home are not printed, for whatever
 * reads the printed card should not pick them. Blanks are "": Last without dated throws, and the
 * three sideways figures where no offline was noted. Last is a serial day.
 *
 * @example
 * cardCells(card, DEFAULT_SETTINGS)[0]?.[3] // "Carry"
 */
export function cardCells(card: Card, settings: Settings): (string | number)[][] {
  const rows = card.rows.filter(({ inBag }) => inBag).map((row) => rowCells(row, settings));
  return [[...CARD_HEADERS], ...rows];
}

function rowCells(row: CardRow, { distanceUnit }: Settings): (string | number)[] {
  const { side } = row;
  const next = nextCarry(row);
  const carry = fromMetres(next.carryM, distanceUnit);
  const sideways = side.throws > 0;
  return [
    row.disc,
    row.type ?? "",
    row.line,
    carry,
    fromMetres(next.lowM, distanceUnit),
    fromMetres(next.highM, distanceUnit),
    carry * row.scale,
    sideways ? carry * side.scaleRad : "",
    sideways ? -carry * Math.tan(side.biasRad) : "",
    fromMetres(knownToM(row), distanceUnit),
    row.throws,
    row.leftOut,
    row.lastDay ?? "",
    row.verdict,
    sideways ? side.throws : "",
  ];
}
