/** From plays-like distances to the disc: what each costs, by the frozen tables, and the least of them. */
import { byChance, byLeaves, byStrokes, type Criterion, picksBy } from "../../core/choice/rank";
import { type Game, gameOf } from "../../core/choice/strokes";
import { LEAST_CHANCE } from "../../core/constants";
import { type Card, type CardRow, DISC_TYPES, type Settings } from "../../core/types";
import { type DistanceUnit, fromMetres, toMetres } from "../../core/units";
import { columnLetters } from "../a1";
import {
  type Block,
  COLUMN,
  FIRST_DISC,
  fixed,
  fixedArea,
  formula,
  frozen,
  ROW,
  TOP,
  tracked,
} from "./cells";
import type { ShotCells } from "./shotFormulas";

/**
 * What each disc costs at its best power, and that power, over the plays-like distance of the hole
 * and how much longer the hole is than that.
 */
export interface PickTable {
  /** A row for each stretch and, within it, each plays-like distance; a figure for each disc. */
  readonly costs: readonly (readonly number[])[];
  readonly powers: readonly (readonly number[])[];
}

/** What to choose by, one table for each of `DOUBTS`. */
export interface PickTables {
  readonly byDoubt: readonly PickTable[];
  readonly tie: number;
}

export interface FrozenPicks {
  /** Longest first. */
  readonly discs: readonly CardRow[];
  /** Plays-like distances, in the unit of the settings. */
  readonly playsLike: readonly number[];
  /** Distance of the hole as a share of its plays-like distance. */
  readonly stretches: readonly number[];
  /** What to choose by; of two, the second where the first costs more than `enough` for every disc. */
  readonly tables: readonly PickTables[];
  /** Spread of each disc on the course, thrown smooth. */
  readonly spreads: readonly number[];
}

/** Doubts of plays-like, shares of it, that are frozen; the sheet goes on to the last of all. */
const DOUBTS = [0, 0.1, 0.3] as const;
const MOST_DOUBT = 0.5;

const STRETCHES = [0.6, 0.75, 0.9, 1, 1.12, 1.3, 1.45, 1.6, 1.8, 2.05, 2.4];

/** Fine where one disc hands over to the next, coarse beyond the shortest and the longest. */
const FINE: Record<DistanceUnit, number> = { ft: 4, m: 1.2 };
const COARSE: Record<DistanceUnit, number> = { ft: 12, m: 3.6 };
const NEAREST: Record<DistanceUnit, number> = { ft: 40, m: 12 };

function playsLikeFigures(discs: readonly CardRow[], unit: DistanceUnit): number[] {
  const carry = ({ mu }: CardRow): number => fromMetres(Math.exp(mu), unit);
  const [longest, shortest] = [carry(discs[0]!), carry(discs.at(-1)!)];
  const fineFrom = 0.7 * shortest;
  const fineTo = 1.12 * longest;
  const figures: number[] = [];
  for (let at = NEAREST[unit]; at < 2.5 * longest;) {
    figures.push(at);
    at += at > fineFrom && at < fineTo ? FINE[unit] : COARSE[unit];
  }
  return figures.map((figure) => Math.round(figure * 10) / 10);
}

const rounded = (value: number, places: number): number => Number(value.toFixed(places));

function table(
  game: Game,
  criterionAt: (distanceM: number) => Criterion,
  playsLike: readonly number[],
  unit: DistanceUnit,
  doubt: number,
): PickTable {
  const rows = STRETCHES.flatMap((stretch) =>
    playsLike.map((figure) => {
      const playsLikeM = toMetres(figure, unit);
      const target = {
        distanceM: playsLikeM * stretch,
        playsLikeM,
        playsLikeSdM: doubt * playsLikeM,
      };
      const criterion = criterionAt(target.distanceM);
      return game.discs.map((thrown) => picksBy([{ thrown, target, driftM: 0 }], criterion)[0]!);
    }),
  );
  return {
    costs: rows.map((row) => row.map(({ cost }) => rounded(cost, 5))),
    powers: rows.map((row) => row.map(({ power }) => rounded(power, 3))),
  };
}

/** The picks of a card, frozen: everything that BEST weighs on a hole without trouble. */
export function frozenPicks(card: Card, settings: Settings): FrozenPicks {
  const { distanceUnit, aimFor, circleM } = settings;
  const game = gameOf(card, settings);
  const discs = game.discs.map(({ row }) => row);
  const playsLike = playsLikeFigures(discs, distanceUnit);
  const criteria =
    aimFor === "strokes"
      ? [(distanceM: number) => byStrokes({}, game.strokesFor(distanceM))]
      : [() => byChance({}, circleM), () => byLeaves({})];
  return {
    discs,
    playsLike,
    stretches: STRETCHES,
    tables: criteria.map((criterion) => ({
      byDoubt: DOUBTS.map((doubt) => table(game, criterion, playsLike, distanceUnit, doubt)),
      tie: criterion(0).tie,
    })),
    spreads: game.discs.map(({ form }) => form.scale),
  };
}

// Frozen tables of what each disc costs and at which power, and the values between their figures.

/**
 * Values between the rows of one disc's column of a frozen table: linear in plays-like distance and
 * stretch. The column alone, as programs read all of what a formula names.
 */
export function between(column: string, row: number, rows: number): string {
  const cell = (column: number): string => fixed(column, row);
  const at = (stretch: number, place: number): string =>
    `INDEX(${column},(${cell(COLUMN.stretch)}+${stretch - 1})*${rows}+${cell(COLUMN.place)}+${place})`;
  const along = (stretch: number): string =>
    `((1-${cell(COLUMN.placeShare)})*${at(stretch, 0)}+${cell(COLUMN.placeShare)}*${at(stretch, 1)})`;
  const share = cell(COLUMN.stretchShare);
  return `${tracked(cell(COLUMN.place))}+${tracked(cell(COLUMN.stretch))}+(1-${share})*${along(0)}+${share}*${along(1)}`;
}

/** Where a value stands among ascending nodes: the number of the one below, and the share of the way on. */
export function placed(
  value: string,
  nodes: string,
  count: number,
  first: number,
  place: string,
): { place: string; share: string } {
  const node = (offset: number): string => `INDEX(${nodes},${place}+${offset})`;
  return {
    place: `IF(${value}<${first},1,MIN(${count - 1},MATCH(${value},${nodes},1)))`,
    share: `${tracked(place)}+MAX(0,MIN(1,(${value}-${node(0)})/(${node(1)}-${node(0)})))`,
  };
}

interface StoredTable {
  readonly block: Block;
  /** The column of each disc. */
  readonly columns: readonly string[];
}

/** Lagrange's weights of the values at three nodes for a place between them. */
const parabola = (at: string, nodes: readonly number[]): string[] =>
  nodes.map((node, index) => {
    const others = nodes.filter((_, other) => other !== index);
    const factors = others.map((other) => `(${at}-${other})/(${rounded(node - other, 6)})`);
    return factors.join("*");
  });

/** A table numbered `index` among all where it stands behind the sheet. */
export function storedTable(
  { costs, powers }: PickTable,
  index: number,
  discs: number,
): { costs: StoredTable; powers: StoredTable } {
  const width = discs + 1;
  const stored = (values: PickTable["costs"], left: number): StoredTable => ({
    block: frozen(left, TOP, values).block,
    columns: values[0]!.map((_, disc) => fixedArea(left + disc, TOP, 1, values.length)),
  });
  const left = COLUMN.tables + 2 * index * width;
  return { costs: stored(costs, left), powers: stored(powers, left + width) };
}

/** Dearer than any throw, be it strokes, a chance to miss, or metres left. */
const NEVER = 1_000_000;

export interface PickCells {
  readonly blocks: readonly Block[];
  /** Numbers of the best and of the second disc in the list; text where there is none. */
  readonly best: string;
  readonly second: string;
  readonly powers: string;
}

/** The formulas that pick, a row for each disc and a few for the best and the second of them. */
export function pickCells(picks: FrozenPicks, shot: ShotCells): PickCells {
  const { discs, playsLike, stretches, tables } = picks;
  const column = (at: number): string => fixedArea(at, FIRST_DISC, 1, discs.length);
  const nodes = frozen(
    COLUMN.nodes,
    TOP,
    playsLike.map((figure) => [figure]),
  );
  const stretchNodes = frozen(
    COLUMN.nodes + 1,
    TOP,
    stretches.map((stretch) => [stretch]),
  );
  const stored = tables.map(({ byDoubt }, index) =>
    byDoubt.map((table, doubt) => storedTable(table, DOUBTS.length * index + doubt, discs.length)),
  );

  const useFirst = fixed(COLUMN.figures, ROW.useFirst);
  const best = fixed(COLUMN.figures, ROW.best);
  const second = fixed(COLUMN.figures, ROW.second);
  const tie = tables.length === 1 ? tables[0]!.tie : tables[1]!.tie;

  const rankOf = (row: number, costColumn: number): string => {
    const cost = fixed(costColumn, row);
    const near = `AND(${cost}<${NEVER},${cost}<MIN(${column(costColumn)})+${tie})`;
    // The power nearest smooth first; among equal powers the lower cost.
    return `IF(${near},ABS(ROUND(${fixed(COLUMN.power, row)},2)-1)+${cost}/${NEVER},${NEVER})`;
  };
  const bestOf = (rankColumn: number): string =>
    `IF(MIN(${column(rankColumn)})<${NEVER},MATCH(MIN(${column(rankColumn)}),${column(rankColumn)},0),"none")`;

  const discRows = discs.flatMap((disc, index): Block[] => {
    const row = FIRST_DISC + index;
    const cell = (at: number): string => fixed(at, row);
    const plays = cell(COLUMN.discPlays);
    const type = disc.type === null ? DISC_TYPES.length : DISC_TYPES.indexOf(disc.type);
    const along = placed(plays, nodes.ref, playsLike.length, playsLike[0]!, cell(COLUMN.place));
    const stretch = placed(
      `${shot.distance}/${plays}`,
      stretchNodes.ref,
      stretches.length,
      stretches[0]!,
      cell(COLUMN.stretch),
    );
    // Along the spread that a doubt adds to the disc's own, costs run as a parabola.
    const own = rounded(picks.spreads[index]!, 6);
    const added = (doubt: number): number => rounded(Math.hypot(own, doubt) - own, 6);
    const variance = `INDEX(${shot.variances},${cell(COLUMN.type)})`;
    const spread = `(${own}^2+${variance}/${plays}^2)^0.5-${own}`;
    const doubt = `${tracked(shot.variances)}+MIN(${added(MOST_DOUBT)},${spread})`;
    const weights = parabola(cell(COLUMN.doubt), DOUBTS.map(added));
    const doubting = (byDoubt: readonly StoredTable[]): string =>
      byDoubt
        .map(({ columns }, node) => {
          const value = between(columns[index]!, row, playsLike.length);
          return `${weights[node]!}*(${value})`;
        })
        .join("+");
    const inReach = (text: string, otherwise: string | number): string =>
      `IF(ISNUMBER(${plays}),${text},${otherwise})`;
    const byTable = (table: number, what: 0 | 1): string =>
      fixed(COLUMN.byTable + 2 * table + what, row);
    const chosen = (what: 0 | 1): string =>
      tables.length === 1
        ? byTable(0, what)
        : `IF(${useFirst}=1,${byTable(0, what)},${byTable(1, what)})`;
    return [
      {
        kind: "cells",
        at: `${columnLetters(COLUMN.type)}${row}`,
        values: [[type + 1]],
        style: "hint",
      },
      formula(COLUMN.discPlays, row, `INDEX(${shot.plays},${cell(COLUMN.type)})`),
      formula(COLUMN.place, row, inReach(along.place, 1)),
      formula(COLUMN.placeShare, row, inReach(along.share, 0)),
      formula(COLUMN.stretch, row, inReach(stretch.place, 1)),
      formula(COLUMN.stretchShare, row, inReach(stretch.share, 0)),
      formula(COLUMN.doubt, row, inReach(doubt, 0)),
      ...stored.flatMap((byDoubt, table) =>
        (["costs", "powers"] as const).map((what, at) =>
          formula(
            COLUMN.byTable + 2 * table + at,
            row,
            inReach(doubting(byDoubt.map((both) => both[what])), what === "costs" ? NEVER : 0),
          ),
        ),
      ),
      formula(COLUMN.cost, row, chosen(0)),
      formula(COLUMN.power, row, chosen(1)),
      formula(COLUMN.rank, row, rankOf(row, COLUMN.cost)),
      formula(COLUMN.costOfRest, row, `IF(${best}=${index + 1},${NEVER},${cell(COLUMN.cost)})`),
      formula(COLUMN.rankOfRest, row, rankOf(row, COLUMN.costOfRest)),
    ];
  });

  return {
    best,
    second,
    powers: column(COLUMN.power),
    blocks: [
      nodes.block,
      stretchNodes.block,
      ...stored.flat().flatMap(({ costs, powers }) => [costs.block, powers.block]),
      formula(
        COLUMN.figures,
        ROW.useFirst,
        `IF(MIN(${column(COLUMN.byTable)})<=${1 - LEAST_CHANCE},1,0)`,
      ),
      formula(COLUMN.figures, ROW.best, bestOf(COLUMN.rank)),
      formula(COLUMN.figures, ROW.second, bestOf(COLUMN.rankOfRest)),
      ...discRows,
    ],
  };
}
