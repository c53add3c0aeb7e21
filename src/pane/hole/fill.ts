/** Filling the boxes of Hole from a row of the course. */
import type { Hole, Settings } from "../../core/types";
import { fromMetres, fromMps } from "../../core/units";
import { EMPTY_HOLE, type HoleForm } from "./form";

/** A number for a box: short, and blank for none. */
const typed = (value: number | null): string =>
  value === null ? "" : String(Number(value.toFixed(1)));

export function fillFrom(hole: Hole, settings: Settings): HoleForm {
  const metres = (value: number | null): string =>
    typed(value === null ? null : fromMetres(value, settings.distanceUnit));
  return {
    ...EMPTY_HOLE,
    from: String(hole.row),
    distance: metres(hole.distanceM),
    rise: metres(hole.riseM),
    headwind: typed(fromMps(hole.headwindMps, settings.windUnit)),
    longTrouble: metres(hole.longTroubleM),
    shortTrouble: metres(hole.shortTroubleM),
    line: hole.line,
  };
}
