/** The card behind whatever a player gives for `throws`. */
import { LEAST_PRIOR_FREEDOM, LEAST_SPREAD, PRIOR_FREEDOM, UPPER_TENTH } from "../constants";
import { cellAt, dateIn, isBlank, numberIn, textIn } from "../log/cell";
import { type Column, findColumns, metresPer } from "../log/headings";
import { discKey, discType, softestPower } from "../log/names";
import { carryFault, passThrows, throwsShape } from "../log/readThrows";
import { messages } from "../messages";
import type {
  BagDisc,
  Card,
  CardRow,
  Cell,
  Cells,
  LeftOut,
  Settings,
  SideForm,
  Verdict,
} from "../types";
import { fromMetres } from "../units";
import { CardMaker } from "./card";
import { knownToM } from "./needed";
import { freedomOf, nextCarry, tQuantile } from "./student";

/** The columns of a printed card, in order. Names are a file format: never change or reorder them. */
export const CARD_HEADERS = [
  "Disc",
  "Type",
  "Line",
  "Carry",
  "Low",
  "High",
  "Spread",
  "Side",
  "Aim",
  "Known to",
  "Throws",
  "Left out",
  "Last",
  "Trend",
  "Side throws",
] as const;

/** The headers by which a card is read back; hand-made cards may use the other words. */
export const CARD_FIELDS = {
  disc: ["disc", "disc name", "discs"],
  type: ["type"],
  line: ["line"],
  softest: ["softest"],
  carry: ["carry", "distance", "dist"],
  low: ["low"],
  high: ["high"],
  spread: ["spread"],
  side: ["side"],
  aim: ["aim"],
  knownTo: ["known to", "known to ±"],
  throws: ["throws"],
  leftOut: ["left out"],
  last: ["last"],
  trend: ["trend"],
  sideThrows: ["side throws"],
} as const;

// The card as cells. In one column a figure each, in the distance unit of the settings:
//     Carry    = e^mu
//     Low/High = Carry · e^∓a,  a = t·scale·√(1 + 1/n)   the next throw, eight times in ten
//     Spread   = Carry · scale
//     Known to = Carry · t·scale/√n                      the carry itself, eight times in ten
//     Side     = Carry · side scale                      the next throw sideways
//     Aim      = −Carry · tan(bias)                      right positive
// where n is the evidence and t the 90 % point of Student's t with the freedom of the row. Nothing is
// rounded, so `readCardCells` gets every number back.

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

// From the figures of one row of a card back to the distribution of the next throw.

/** A hand-made figure that asks for a wider spread of ln carry, or for more throws, counts as not given. */
const WIDEST = 1;
const MOST_THROWS = 1e6;

/** Figures of a card in m; NaN where the card does not give one. */
export interface CarryFigures {
  readonly carry: number;
  readonly low: number;
  readonly high: number;
  readonly spread: number;
  readonly knownTo: number;
  readonly throws: number;
}

export interface NextThrow {
  readonly mu: number;
  readonly scale: number;
  readonly freedom: number;
  readonly evidence: number;
}

/**
 * With a = ln(High/Carry) and k = Known to/Carry, both t·scale times a function of n, the evidence is
 * n = (a/k)² − 1; the scale is Spread/Carry; and t = k·√n/scale tells the freedom. Exact to rounding
 * for a card that we printed. What a hand-made card leaves out is filled in from what is there: n from
 * the count of throws, else one throw; the spread from the interval, else the usual spread; the freedom of the
 * prior and of those throws. Figures that contradict each other never give less freedom than a card of
 * ours has.
 *
 * @example
 * nextThrow({ carry: 90, low: NaN, high: NaN, spread: 5, knownTo: NaN, throws: NaN }, 0.07)
 * // one throw with scale 5/90 and freedom 4: a wide interval
 */
export function nextThrow(figures: CarryFigures, usualSpread: number): NextThrow {
  const { carry } = figures;
  const a = firstWithin(WIDEST, Math.log(figures.high / carry), Math.log(carry / figures.low));
  const k = firstWithin(WIDEST, figures.knownTo / carry);
  const evidence = Math.max(1, firstWithin(MOST_THROWS, (a / k) ** 2 - 1, figures.throws, 1));
  const tScale = firstWithin(WIDEST, k * Math.sqrt(evidence), a / Math.sqrt(1 + 1 / evidence));
  const guessed = PRIOR_FREEDOM + evidence - 1;
  const scale = firstWithin(
    WIDEST,
    figures.spread / carry,
    tScale / tQuantile(UPPER_TENTH, guessed),
    usualSpread,
  );
  const told = figures.spread / carry >= LEAST_SPREAD && tScale > 0;
  return {
    mu: Math.log(carry),
    scale,
    freedom: told ? Math.max(LEAST_PRIOR_FREEDOM, freedomOf(tScale / scale)) : guessed,
    evidence,
  };
}

/** The first of some numbers that is no slip and at most `most`; NaN where there is none. */
const firstWithin = (most: number, ...numbers: readonly number[]): number =>
  numbers.find((number) => number >= LEAST_SPREAD && number <= most) ?? NaN;

// From the sideways figures of one row of a card back to what is known sideways.

/** Figures of a card in m; NaN where the card does not give one. */
export interface SideFigures {
  readonly carry: number;
  readonly side: number;
  readonly aim: number;
  readonly throws: number;
}

/**
 * Scale = Side/Carry, bias = −atan(Aim/Carry), and the freedom of the prior and of the throws: exact
 * for a card that we printed. A Side without a count of throws is worth one; without a Side, the
 * usual spread stands.
 */
export function sideFromFigures(figures: SideFigures, usualSpreadRad: number): SideForm {
  const { carry, side, aim } = figures;
  const known = side / carry >= LEAST_SPREAD;
  const throws = known ? (figures.throws > 0 ? figures.throws : 1) : 0;
  return {
    biasRad: known && Number.isFinite(aim) ? -Math.atan(aim / carry) : 0,
    scaleRad: known ? side / carry : usualSpreadRad,
    freedom: PRIOR_FREEDOM + Math.max(0, throws - 1),
    throws,
  };
}

// A card read back from cells: the exact inverse of `printedCard` for a card that we printed, and the
// best that can be said of one made by hand, of which only Disc and Carry must be there.

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

/**
 * The card of a throw log with headers, of a bare list of disc and carry, or of a printed or hand-made
 * card (recognised by a header that only a card has: Low, High, Spread or Known to). The bag, where
 * given, tells type, line and what stays at home; a card that comes with its own keeps those of discs
 * that the bag does not list. See `readThrows`, `makeCard` and `readCardCells` for what each reads.
 *
 * @example
 * readCard([["Copper mid", 301], ["Mint fairway", 352]], null, DEFAULT_SETTINGS).rows.length // 2
 */
export function readCard(cells: Cells, bag: readonly BagDisc[] | null, settings: Settings): Card {
  if (throwsShape(cells) !== "card") {
    const maker = new CardMaker(bag ?? [], settings);
    passThrows(cells, settings, maker);
    return maker.card();
  }
  const card = readCardCells(cells, settings);
  return bag ? withBag(card, bag) : card;
}

function withBag(card: Card, bag: readonly BagDisc[]): Card {
  const listed = new Map(bag.map((disc) => [discKey(disc.disc), disc]));
  const rows = card.rows.map((row) => {
    const known = listed.get(discKey(row.disc));
    if (!known) return row;
    const { type, line, inBag } = known;
    return { ...row, type, line, inBag, softest: softestPower(type, known.softest) };
  });
  return { ...card, rows };
}
