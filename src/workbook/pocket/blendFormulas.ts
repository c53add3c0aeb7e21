import { TYPE_DISTANCES_FT } from "../../core/constants";
import { DISC_TYPES } from "../../core/types";
import { fromMetres, toMetres, type DistanceUnit } from "../../core/units";
import { fixed, formula, frozen, tracked, type Block } from "./cells";
import { OUT_OF_REACH } from "./grid";
import { COLUMN, ROW, TOP } from "./layout";
import { typeCells } from "./typedFormulas";

/**
 * Plays-like distance where the type is not known: between those of the two types usual at the
 * distance, in the row under the last type.
 */
export function blendFormulas(distance: string, unit: DistanceUnit): Block[] {
  const count = DISC_TYPES.length;
  const usual = DISC_TYPES.map((type) => fromMetres(toMetres(TYPE_DISTANCES_FT[type], "ft"), unit));
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
  return [
    anchors.block,
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
      `IF(${tracked(nearer)}+COUNT(${low},${high})=2,(1-${share})*${low}+${share}*${high},"${OUT_OF_REACH}")`,
    ),
    formula(COLUMN.sure, TOP + count, `${tracked(nearer)}+MIN(${lowSure},${highSure})`),
  ];
}
