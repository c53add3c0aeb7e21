/** From the three inputs to plays-like distances: a cubic in each direction through the frozen grid. */
import { DISC_TYPES } from "../../core/types";
import type { DistanceUnit } from "../../core/units";
import { onAxis } from "./axisFormulas";
import { blendFormulas } from "./blendFormulas";
import { fixed, formula, type Block } from "./cells";
import type { Grid } from "./grid";
import { COLUMN, INPUTS, ROW } from "./layout";
import { allTypes, typeCell, typeCells, type Place } from "./typedFormulas";

export interface ShotCells {
  readonly blocks: readonly Block[];
  readonly distance: string;
  /** 1 where the inputs are numbers that the sheet knows, 0 beyond them, −1 where one is no number. */
  readonly known: string;
  /** Plays-like distance of each type, and last where the type is not known. */
  readonly plays: string;
  readonly untyped: string;
  /** 1 where no figure next to the place of the untyped distance lies beyond reach. */
  readonly sure: string;
}

function isKnown({ distance, rise, wind }: Place): Block {
  const notNumber = (input: string): string => `AND(${input}<>"",NOT(ISNUMBER(${input})))`;
  const noNumber = `OR(NOT(ISNUMBER(${INPUTS.distance})),${notNumber(INPUTS.rise)},${notNumber(INPUTS.wind)})`;
  const within = `AND(${INPUTS.distance}=${distance.value},N(${INPUTS.rise})=${rise.value},N(${INPUTS.wind})=${wind.value})`;
  return formula(COLUMN.figures, ROW.known, `IF(${noNumber},-1,IF(${within},1,0))`);
}

/** Inputs as the sheet takes them, and the plays-like distance of each disc type. */
export function shotCells(grid: Grid, unit: DistanceUnit): ShotCells {
  const place: Place = {
    distance: onAxis(INPUTS.distance, grid.distances, ROW.distance, COLUMN.weights),
    rise: onAxis(INPUTS.rise, grid.rises, ROW.rise, COLUMN.weights + 1),
    wind: onAxis(INPUTS.wind, grid.winds, ROW.wind, COLUMN.weights + 2),
  };
  const types = DISC_TYPES.length;
  return {
    distance: place.distance.value,
    known: fixed(COLUMN.figures, ROW.known),
    plays: typeCells(COLUMN.plays, types + 1),
    untyped: typeCell(COLUMN.plays, types),
    sure: typeCell(COLUMN.sure, types),
    blocks: [
      isKnown(place),
      ...Object.values(place).flatMap(({ blocks }: Place["distance"]) => blocks),
      ...allTypes(grid, place),
      ...blendFormulas(grid, place, unit),
    ],
  };
}
