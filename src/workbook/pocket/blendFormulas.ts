import { DISC_TYPES } from "../../core/types";
import type { DistanceUnit } from "../../core/units";
import { fixed, formula, frozen, tracked, type Block } from "./cells";
import { NEIGHBOURS } from "./axisFormulas";
import { OUT_OF_REACH, usualDistance, type Grid } from "./grid";
import { COLUMN, ROW, TOP } from "./layout";
import { crossed, PLACE_FIGURES, typeCells, type Place } from "./typedFormulas";

const WEIGHTS_TOP = TOP + 2 * (NEIGHBOURS + 1);

/**
 * Plays-like distance where the type is not known, in the row under the last type: between those of
 * the two types usual at the distance, and off that line by a parabola through the frozen bend
 * half-way.
 */
export function blendFormulas(grid: Grid, place: Place, unit: DistanceUnit): Block[] {
  const distance = place.distance.value;
  const count = DISC_TYPES.length;
  const usual = DISC_TYPES.map((type) => usualDistance(type, unit));
  const anchors = frozen(
    COLUMN.anchors,
    TOP,
    usual.map((figure) => [figure]),
  );
  const nearer = fixed(COLUMN.figures, ROW.nearer);
  const share = fixed(COLUMN.figures, ROW.share);
  const pair = (ref: string): readonly [string, string] => [
    `INDEX(${ref},${nearer})`,
    `INDEX(${ref},${nearer}+1)`,
  ];
  const [from, to] = pair(anchors.ref);
  const [low, high] = pair(typeCells(COLUMN.plays, count));
  const [lowSure, highSure] = pair(typeCells(COLUMN.sure, count));
  const bends = frozen(COLUMN.bends, TOP, grid.bends);
  const weights = crossed(place.wind, place.rise, WEIGHTS_TOP);
  const corner = (more: number): string =>
    `INDEX(${bends.ref},(${nearer}-1)*${grid.winds.count}+${place.wind.first}+${more},${place.rise.first}+${more})`;
  const bend = `4*${share}*(1-${share})*SUMPRODUCT(${corner(1)}:${corner(NEIGHBOURS)},${weights.ref})`;
  const line = `(1-${share})*${low}+${share}*${high}`;
  return [
    anchors.block,
    bends.block,
    ...weights.blocks,
    formula(
      COLUMN.figures,
      ROW.nearer,
      `IF(${distance}<${usual[0]},1,MIN(${count - 1},MATCH(${distance},${anchors.ref},1)))`,
    ),
    formula(
      COLUMN.figures,
      ROW.share,
      `${tracked(nearer)}+MAX(0,MIN(1,(${distance}-${from})/(${to}-${from})))`,
    ),
    formula(
      COLUMN.plays,
      TOP + count,
      `IF(${tracked(nearer)}+${tracked(PLACE_FIGURES)}+COUNT(${low},${high})=2,${line}+${bend},"${OUT_OF_REACH}")`,
    ),
    formula(COLUMN.sure, TOP + count, `${tracked(nearer)}+MIN(${lowSure},${highSure})`),
  ];
}
