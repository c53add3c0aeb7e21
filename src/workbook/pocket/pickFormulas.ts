/** From plays-like distances to the disc: what each costs, by the frozen tables, and the least of them. */
import { LEAST_CHANCE } from "../../core/constants";
import { DISC_TYPES } from "../../core/types";
import { columnLetters } from "../a1";
import { fixed, fixedArea, formula, frozen, type Block } from "./cells";
import type { FrozenPicks } from "./picks";
import { between, placed, storedTable } from "./tableFormulas";
import { COLUMN, FIRST_DISC, ROW, TOP } from "./layout";
import type { ShotCells } from "./shotFormulas";

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
  const stored = tables.map((table, index) => storedTable(table, index, discs.length));

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
      ...stored.flatMap(({ costs, powers }, table) => [
        formula(
          COLUMN.byTable + 2 * table,
          row,
          inReach(between(costs.columns[index]!, row, playsLike.length), NEVER),
        ),
        formula(
          COLUMN.byTable + 2 * table + 1,
          row,
          inReach(between(powers.columns[index]!, row, playsLike.length), 0),
        ),
      ]),
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
      ...stored.flatMap(({ costs, powers }) => [costs.block, powers.block]),
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
