/** A pick with all its figures. */
import type { Option } from "../types";
import { chanceOf } from "./chance";
import { finishM } from "./finish";
import { leavesM } from "./leaves";
import type { Pick } from "./picks";

/** `strokes` are taken as already worked out, so that the option says what it was chosen by. */
export function optionOf(
  { thrown: { row, landings }, target, power, at }: Pick,
  strokes: number,
  circleM: number,
): Option {
  return {
    disc: row.disc,
    power,
    playsLikeM: target.playsLikeM,
    chance: chanceOf(row, target, circleM)(power),
    leavesM: leavesM(landings[at]!, target),
    strokes,
    longM: finishM(row, power, target),
    aimM: -target.distanceM * Math.tan(row.side.biasRad),
    then: [],
  };
}
